// The household in an otherwise good house, through all phases.
#include "fuzz.hpp"

using namespace manciple; // NOLINT

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const text::FilesInMemory good = fuzz::house();
  text::FilesInMemory files = good;
  files.texts["plans/household.yaml"] =
      std::string(reinterpret_cast<const char*>(data), size); // NOLINT
  fuzz::compile(files);
  return 0;
}
