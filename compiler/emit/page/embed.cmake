# Run by the build: writes the page's style and scripts, and the library that draws square codes, as
# constants of C++. Files of a folder are joined in the order of their names; of a module's script,
# `export` and `import` go, for in the page all stand in one scope, and so do comments and indents.
# cmake -DOUT=FILE -DFOLDER=FOLDER -DQR=FILE -P embed.cmake
set(out "// Made by the build from compiler/emit/page.\n#include \"emit/page/parts.hpp\"\n\nnamespace manciple::emit::page {\n\n")

function(embed name content)
  string(FIND "${content}" ")page\"" closes)
  if(NOT closes EQUAL -1)
    message(FATAL_ERROR "${name} has the end of a raw string in it")
  endif()
  set(out "${out}const std::string_view ${name} = R\"page(${content})page\";\n" PARENT_SCOPE)
endfunction()

function(style_of name pattern)
  set(joined "")
  file(GLOB files ${FOLDER}/style/${pattern})
  list(SORT files)
  foreach(file IN LISTS files)
    file(READ ${file} content)
    string(REGEX REPLACE "/\\*[^*]*\\*/\n?" "" content "${content}")
    string(REGEX REPLACE "\n +" "\n" content "${content}")
    string(APPEND joined "${content}")
  endforeach()
  embed(${name} "${joined}")
  set(out "${out}" PARENT_SCOPE)
endfunction()
# What is painted first, the day and the list, and the rest.
style_of(frame_style "0*.css")
style_of(first_style "[1-3]*.css")
style_of(style "[4-9]*.css")

function(script_of name folder before after)
  set(joined "${before}")
  file(GLOB files ${FOLDER}/${folder}/*.mjs)
  list(SORT files)
  foreach(file IN LISTS files)
    file(READ ${file} content)
    string(REGEX REPLACE "(^|\n)import [^\n]*" "\\1" content "${content}")
    string(REGEX REPLACE "(^|\n)export " "\\1" content "${content}")
    string(REGEX REPLACE "(^|\n) *//[^\n]*" "\\1" content "${content}")
    string(REGEX REPLACE "\n[\n ]+" "\n" content "${content}")
    string(APPEND joined "${content}")
  endforeach()
  embed(${name} "${joined}${after}")
  set(out "${out}" PARENT_SCOPE)
endfunction()
# The first script's names are the page's, so that the other one has them.
script_of(first_script first "'use strict';\n" "")
# The first tick is as quick as the others: its functions are compiled before it, where a browser knows
# this comment (Chromium does).
script_of(script script "//# allFunctionsCalledOnLoad\n(() => {\n'use strict';\n" "})();\n")

# Its licence stands at its beginning and stays; its other comments go.
file(READ ${QR} content)
string(REGEX MATCH "^(//[^\n]*\n)+" licence "${content}")
string(REGEX REPLACE "(^|\n) *//[^\n]*" "\\1" content "${content}")
string(REGEX REPLACE "\n[\n ]+" "\n" content "${content}")
embed(qr_library "${licence}${content}")

string(APPEND out "\n} // namespace manciple::emit::page\n")
file(WRITE ${OUT} "${out}")
