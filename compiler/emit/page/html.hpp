#pragma once

#include <string>
#include <string_view>

/// Text as HTML.
namespace manciple::emit::page {

/// Text that HTML would take for markup, made harmless, in content and in quoted attributes.
/// Control characters, which HTML has no way to say, become U+FFFD.
std::string escape(std::string_view text);

/// A name that a file of the house gives: escaped, and set apart from what stands beside it, so
/// that one that is written from right to left does not turn the figures round.
std::string name(std::string_view text);

/// A place in a drawing as a share of its width, to a hundredth of a percent: "12.5%".
std::string percent(double share);

} // namespace manciple::emit::page
