"""The schemas that the program writes are JSON Schema 2020-12, and the demo and the examples are
valid by them; what has a key too many or another shape is not.

usage: schema.py PROGRAM
"""
import json
import pathlib
import subprocess
import sys

import jsonschema
import yaml

program = sys.argv[1]
root = pathlib.Path(__file__).parents[2]
houses = [root, *(p.parent for p in root.glob("examples/*/plans"))]
files = {
    "recipe": [f for h in houses for f in h.glob("recipes/*.yaml") if f.stem != "foods"],
    "foods": [f for h in houses for f in h.glob("recipes/foods.yaml")],
    "household": [h / "plans/household.yaml" for h in houses],
    "on-hand": [f for h in houses for f in h.glob("plans/on-hand.yaml")],
    "shop": [f for h in houses for f in h.glob("plans/stores/*.yaml")],
    "plan": [f for h in houses for f in h.glob("plans/*.yaml")
             if f.stem not in ("household", "on-hand")],
}
wrong = {
    "recipe": ["{name: x, serves: [2], ingredients: []}", "{name: x, serves: 2, ingredients: [], zz: 1}"],
    "foods": ["{leek: 5}", "{leek: {department: [produce]}}"],
    "household": ["{people: [], meals: {dinner: [1]}}", "{people: [], meals: {}, appliances: 5}"],
    "on-hand": ["{on hand: {a: 5}}", "{date: 2027-03-01, on hand: {a: b}}"],
    "shop": ["{shop: x, prices: {}, tax: 8 %}", "{shop: x, prices: 5}"],
    "plan": ["{plan: x, from: 2027-03-01, until: 2027-03-02, meals: [stew]}", "[]"],
}
for kind, known in files.items():
    said = subprocess.run([program, "schema", kind], capture_output=True, text=True, check=True)
    schema = json.loads(said.stdout)
    jsonschema.Draft202012Validator.check_schema(schema)
    validator = jsonschema.Draft202012Validator(schema)
    assert known, kind
    for file in known:
        # Every scalar as the text that it is: YAML 1.1 takes the key `on` for a truth value.
        node = yaml.load(file.read_text(), yaml.BaseLoader)
        errors = [e.message[:200] for e in validator.iter_errors(node)]
        assert not errors, (file, errors)
    for text in wrong[kind]:
        assert not validator.is_valid(yaml.load(text, yaml.BaseLoader)), (kind, text)
    keys = subprocess.run([program, "keys", kind], capture_output=True, text=True, check=True)
    for key in schema.get("properties", {}):
        assert f"  {key}" in keys.stdout, (kind, key)
print("schemas:", {kind: len(known) for kind, known in files.items()})
