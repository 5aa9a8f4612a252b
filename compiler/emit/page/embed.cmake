# Run by the build: writes the page's style and script as constants of C++.
# cmake -DOUT=FILE -DSTYLE=FILE -DSCRIPT=FILE -P embed.cmake
set(out "// Made by the build from compiler/emit/page.\n#include \"emit/page/parts.hpp\"\n\nnamespace manciple::emit::page {\n\n")
foreach(part style script)
  string(TOUPPER ${part} file)
  file(READ ${${file}} content)
  string(FIND "${content}" ")page\"" closes)
  if(NOT closes EQUAL -1)
    message(FATAL_ERROR "${${file}} has the end of a raw string in it")
  endif()
  string(APPEND out "const std::string_view ${part} = R\"page(${content})page\";\n")
endforeach()
string(APPEND out "\n} // namespace manciple::emit::page\n")
file(WRITE ${OUT} "${out}")
