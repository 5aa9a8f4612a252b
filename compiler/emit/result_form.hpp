#pragma once

namespace manciple::emit {

/// The form of result.json that is written. A change after which an older result could not be
/// read, or would be misread, raises it.
inline constexpr int result_form = 1;

} // namespace manciple::emit
