#pragma once

#include <cstdint>
#include <span>
#include <string_view>

/// The built-in food data. The build reads and checks reference/*.yaml and writes these tables.
namespace manciple::foods {

/// A name or alias in its normal form, and the record that it names.
struct ReferenceName {
  std::string_view name;
  std::uint16_t record;
};

/// Sorted by name.
extern const std::span<const ReferenceName> reference_names;
/// Each the bytes of one food (record.hpp), in the order of names.
extern const std::span<const std::string_view> reference_records;

} // namespace manciple::foods
