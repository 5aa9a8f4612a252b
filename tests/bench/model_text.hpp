#pragma once

#include <istream>
#include <string>

#include "purchase/model.hpp"

namespace manciple::purchase {

/// A model as text, a record a line, fields by position, "-" for none:
///
///     model LAST_DAY
///     room PLACE VOLUME...                  pantry, fridge or freezer; one volume a night
///     shop CREDIT OVER OFF
///     stop DAY SHOP COST ALWAYS
///     good COOL FROZEN OPENED PLACE ROOM_COOL ROOM_FROZEN WASTE SALVAGE CAP DAYS
///     demand DAY AMOUNT TAKES_FROZEN LONGEST_AGE        of the last good
///     offer SHOP FIRST LAST PACK BY_WEIGHT UNIT LIMIT COST...    of the last good; table at the
///     end
std::string write_model(const Model& model);

/// Throws std::runtime_error with the line's number if a line is not of that form.
Model read_model(std::istream& text);

} // namespace manciple::purchase
