# Run by the build: writes the page's style and script, and the library that draws square codes, as
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

set(style "")
file(GLOB files ${FOLDER}/style/*.css)
list(SORT files)
foreach(file IN LISTS files)
  file(READ ${file} content)
  string(REGEX REPLACE "/\\*[^*]*\\*/\n?" "" content "${content}")
  string(REGEX REPLACE "\n +" "\n" content "${content}")
  string(APPEND style "${content}")
endforeach()
embed(style "${style}")

set(script "(() => {\n'use strict';\n")
file(GLOB files ${FOLDER}/script/*.mjs)
list(SORT files)
foreach(file IN LISTS files)
  file(READ ${file} content)
  string(REGEX REPLACE "(^|\n)import [^\n]*" "\\1" content "${content}")
  string(REGEX REPLACE "(^|\n)export " "\\1" content "${content}")
  string(REGEX REPLACE "(^|\n) *//[^\n]*" "\\1" content "${content}")
  string(REGEX REPLACE "\n[\n ]+" "\n" content "${content}")
  string(APPEND script "${content}")
endforeach()
string(APPEND script "})();\n")
embed(script "${script}")

file(READ ${QR} content)
embed(qr_library "${content}")

string(APPEND out "\n} // namespace manciple::emit::page\n")
file(WRITE ${OUT} "${out}")
