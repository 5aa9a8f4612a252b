"""Reads the Markdown of a house with a parser of its own (CommonMark with tables and strikethrough):
nothing that a file says has become markup, and names read as they were written.
Usage: check_markdown.py FOLDER"""
import json
import pathlib
import sys

from markdown_it import MarkdownIt

folder = pathlib.Path(sys.argv[1])
result = json.loads((folder / "result.json").read_text())
parser = MarkdownIt("commonmark").enable(["table", "strikethrough"])
markup = {"html_block", "html_inline", "link_open", "image", "em_open", "s_open", "code_inline",
          "code_block", "fence", "hr", "blockquote_open", "ordered_list_open"}
failures = []
said = {}
for file in sorted(folder.glob("*.md")):
    tokens = parser.parse(file.read_text())
    inline = [child for token in tokens for child in token.children or []]
    for token in [*tokens, *inline]:
        if token.type in markup:
            failures.append(f"{file.name}: {token.type}: {token.content[:80]}")
    if sum(token.type == "heading_open" and token.tag == "h1" for token in tokens) != 1:
        failures.append(f"{file.name}: not one heading of the whole")
    if any(token.type == "bullet_list_open" and token.level > 0 for token in tokens):
        failures.append(f"{file.name}: a list in a list")
    # Rows of a table are as wide as its head.
    widths = []
    for token in tokens:
        if token.type == "tr_open":
            widths.append(0)
        elif token.type in ("td_open", "th_open"):
            widths[-1] += 1
        elif token.type == "table_close":
            if len(set(widths)) > 1:
                failures.append(f"{file.name}: rows of {sorted(set(widths))} cells")
            widths = []
    said[file.name] = "\n".join(
        "".join(child.content for child in token.children) for token in tokens if token.children)

for name in [result["plan"], *(visit["shop"] for visit in result["visits"])]:
    if " ".join(name.split()) not in said["list.md"]:
        failures.append(f"list.md does not say {name!r}")
for meal in {meal["meal"] for meal in result["meals"]}:
    if meal not in said["menu.md"]:
        failures.append(f"menu.md does not say {meal!r}")
print("\n".join(failures))
sys.exit(bool(failures))
