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

/// The same markup in letters of ASCII, others by their numbers: a browser reads a page of them
/// twice as fast, for its text then takes one byte a letter.
std::string in_ascii(std::string_view html);
/// The same for a script, in whose texts a letter is written otherwise.
std::string script_in_ascii(std::string_view script);

/// Markup that is laid out only when somebody looks at it: the content of a `noscript`, which a
/// browser without a script shows as it stands, and one with a script takes for text, whatever
/// stands in it (HTML Living Standard, 4.12.2). The script makes elements of it (`unfold`).
std::string folded(std::string_view html);

/// A place in a drawing as a share of its width, to a hundredth of a percent: "12.5%".
std::string percent(double share);

} // namespace manciple::emit::page
