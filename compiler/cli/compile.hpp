#pragma once

#include "emit/compiled.hpp"
#include "review/review.hpp"

#include <optional>
#include <string>

namespace manciple::cli {

/// Compiles a plan file: text and measures into foods and kitchen, the kitchen resolved into
/// makings and uses, what is missing bought, what is to be done scheduled. Of a plan of which
/// something is done, by its receipts, counts or `as_of`, only what is to come. Nothing when there
/// are errors.
std::optional<emit::Compiled> compile(const std::string& plan_path, text::Sources& sources,
                                      text::Diagnostics& diagnostics,
                                      const purchase::Search& search = {},
                                      const text::Files& files = text::disk(),
                                      std::optional<text::Date> as_of = std::nullopt);

/// A house and what has been done of its plan.
struct Done {
  kitchen::Kitchen kitchen; ///< with the plan as a whole
  resolve::Resolved resolved;
  history::Past past;
};

/// What has been by the morning of a day (absent: that from which is planned), what is to come
/// before it as the list says. Nothing when there are errors.
std::optional<Done> done_until(const std::string& plan_path, std::optional<text::Date> day,
                               text::Sources& sources, text::Diagnostics& diagnostics,
                               const text::Files& files = text::disk());

/// A plan from the count on with which it began, through later ones, up to where it is.
struct Reviewed {
  bool begun = false;       ///< something of it is done
  std::optional<Done> done; ///< nothing when there are errors
};
Reviewed reviewed(const std::string& plan_path, text::Sources& sources,
                  text::Diagnostics& diagnostics, const text::Files& files = text::disk());

/// A receipt, and what the list of its day said of its shop before it was there.
struct BesideList {
  kitchen::Kitchen kitchen;
  kitchen::Receipt receipt;
  std::optional<kitchen::Receipt> list; ///< none where the list did not go there
};

/// Of a receipt by the name of its file; nothing where its day is not of the plan.
std::optional<BesideList> beside_list(const std::string& plan_path, const std::string& receipt,
                                      text::Sources& sources, text::Diagnostics& diagnostics,
                                      const text::Files& files = text::disk());

} // namespace manciple::cli
