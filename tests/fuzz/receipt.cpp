// A receipt in an otherwise good house, through all phases: nothing is lost and nothing comes from
// nowhere.
#include "fuzz.hpp"

#include "cli/compile.hpp"

#include <map>

using namespace manciple; // NOLINT

namespace {

void check_conserved(const history::Past& past) {
  std::map<foods::FoodId, measure::Rational> sums;
  for (const history::Move& move : past.moves) {
    const bool in =
        move.kind == history::Move::Kind::counted || move.kind == history::Move::Kind::bought;
    sums[move.food] += in ? move.amount : measure::Rational(-move.amount);
  }
  for (const history::Holding& one : past.there) {
    fuzz::require(one.amount > 0, "a holding of nothing");
    sums[one.food] -= one.cut ? measure::Rational(0) : one.amount;
  }
  for (const auto& [food, rest] : sums) {
    fuzz::require(rest == 0, "what came in is not what went out and is there");
  }
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const text::FilesInMemory good = fuzz::house();
  text::FilesInMemory files = good;
  files.texts["plans/receipts/2027-03-01-corner.yaml"] =
      std::string(reinterpret_cast<const char*>(data), size); // NOLINT
  fuzz::compile(files);
  text::Sources sources;
  text::Diagnostics diagnostics;
  const auto done =
      cli::done_until("plans/p.yaml", text::parse_date("2027-03-06"), sources, diagnostics, files);
  if (done) {
    check_conserved(done->past);
  }
  return 0;
}
