#include "emit/emit.hpp"

namespace manciple::emit {

std::vector<Output> outputs(const Compiled& compiled, std::string_view calendar_before) {
  return {{"list.txt", list_text(compiled)},
          {"list.md", list_markdown(compiled)},
          {"list.csv", list_csv(compiled)},
          {"menu.md", menu_markdown(compiled)},
          {"prep.md", prep_markdown(compiled)},
          {"days.md", days_markdown(compiled)},
          {"labels.md", labels_markdown(compiled)},
          {"money.md", money_markdown(compiled)},
          {"left.md", left_markdown(compiled)},
          {"nutrition.md", nutrition_markdown(compiled)},
          {"nutrition.csv", nutrition_csv(compiled)},
          {"calendar.ics", calendar_ics(compiled, calendar_before)},
          {"month.html", page_html(compiled)},
          {"result.json", result_json(compiled)}};
}

} // namespace manciple::emit
