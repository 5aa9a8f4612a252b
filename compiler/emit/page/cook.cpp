#include "emit/day_words.hpp"
#include "emit/lanes.hpp"
#include "emit/page/html.hpp"
#include "emit/page/parts.hpp"
#include "emit/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace manciple::emit::page {
namespace {

// The axis of a session has a line for every moment at which something begins or ends, so that the
// words of a short task have as much room as they need; how long it takes stands in it.
class Axis {
public:
  explicit Axis(const prep::SessionPlan& session) {
    for (const prep::Task& task : session.tasks) {
      moments_.insert(task.start);
    }
    moments_.insert(session.length);
  }
  /// The line at a moment, from 1; of one between two, the later one.
  [[nodiscard]] std::size_t line(int moment) const {
    return 1 +
           static_cast<std::size_t>(std::distance(moments_.begin(), moments_.lower_bound(moment)));
  }
  [[nodiscard]] const std::set<int>& moments() const { return moments_; }

private:
  std::set<int> moments_;
};

// So many moments stand on one sheet in small letters, in usual and in large ones.
std::string_view letters_for(const Axis& axis) {
  constexpr std::size_t usual = 40;
  constexpr std::size_t few = 22;
  const std::size_t rows = axis.moments().size();
  return rows > usual ? " dense" : rows <= few ? " few" : "";
}

std::string takes(const prep::Task& task, const kitchen::Session& window,
                  const std::optional<std::string>& degrees) {
  std::string out;
  const auto add = [&](const std::string& part) { out += (out.empty() ? "" : "; ") + part; };
  if (task.hands_on > 0) {
    add(text::print_minutes(task.hands_on));
  }
  if (task.then > 0) {
    add(fmt::format("{}alone until {}", task.hands_on > 0 ? "then " : "",
                    clock_in(window, task.start + task.hands_on + task.then)));
  }
  if (!task.appliance.empty()) {
    add(escape(task.appliance) + (degrees ? " " + heat_mark() + " " + *degrees : ""));
  }
  return out;
}

// Where a task stands on paper: its column and the lines between which it stands.
struct Cell {
  std::size_t column = 0;
  std::size_t from = 0;
  std::size_t to = 0;
};

// What starts by itself has a column of its own beside the cooks, one thing below the other.
std::vector<Cell> cells(const prep::SessionPlan& session, const kitchen::Session& window,
                        const Axis& axis) {
  std::vector<Cell> out;
  std::vector<std::size_t> free_from(static_cast<std::size_t>(window.cooks) + 1, 1);
  for (const prep::Task& task : session.tasks) {
    const std::size_t lane = task.cook.value_or(static_cast<std::size_t>(window.cooks));
    const std::size_t from = std::max(axis.line(task.start), free_from[lane]);
    const std::size_t to = std::max(from + 1, axis.line(task.start + task.hands_on));
    free_from[lane] = to;
    out.push_back({lane + 2, from, to});
  }
  return out;
}

std::string task_item(const Compiled& compiled, const prep::SessionPlan& session,
                      const kitchen::Session& window, const Cell& cell, std::size_t t) {
  const prep::Task& task = session.tasks[t];
  const std::optional<std::string> degrees =
      task.fahrenheit ? std::optional(on_the_dial(compiled, *task.fahrenheit)) : std::nullopt;
  const std::string told = takes(task, window, degrees);
  return fmt::format(
      "<li class=\"task{}\" data-at={} data-then={} style=\"--c:{};--a:{};--b:{}\"><label><input "
      "type=checkbox><time>{}</time><span><b>{}</b> <bdi>{}</bdi>{}{}</span></label></li>\n",
      task.cook ? "" : " alone", window.from + task.start, task.then, cell.column, cell.from,
      cell.to, clock_in(window, task.start),
      window.cooks > 1 && task.cook ? escape(cook_name(window, *task.cook)) + ":" : "",
      escape(task.what), told.empty() ? "" : " <small>" + told + "</small>",
      task.purpose.empty() ? "" : " <small class=for>for " + name(task.purpose) + "</small>");
}

// Appliances as thin bars beside the cooks, each with the numbers of nothing: their names stand
// above, and what they do in the row at which they start.
std::string bars(const Compiled& compiled, const prep::SessionPlan& session, const Axis& axis,
                 std::size_t first_column) {
  std::string out;
  std::size_t column = first_column;
  for (const Lane& lane : lanes(compiled, session)) {
    if (lane.group == "cook") {
      continue;
    }
    out += fmt::format("<div class=bar-name style=--c:{}>{}</div>", column, escape(lane.name));
    for (const Block& block : lane.blocks) {
      out += fmt::format("<div class=busy style=\"--c:{};--a:{};--b:{}\"></div>", column,
                         axis.line(block.start),
                         std::max(axis.line(block.start) + 1, axis.line(block.end)));
    }
    ++column;
  }
  return out;
}

std::size_t appliances_in(const Compiled& compiled, const prep::SessionPlan& session) {
  const std::vector<Lane> all = lanes(compiled, session);
  return static_cast<std::size_t>(
      std::count_if(all.begin(), all.end(), [](const Lane& lane) { return lane.group != "cook"; }));
}

// On paper it is said where it is done.
std::string boxes(const Compiled& compiled, resolve::MakingId making) {
  const std::string said = boxes_of(compiled, making);
  return said.empty() ? "" : "<span class=boxes>" + escape(said) + "</span>";
}

std::string made_here(const Compiled& compiled, const prep::SessionPlan& session) {
  std::string out;
  for (const resolve::Making& making : compiled.resolved.makings) {
    if (making.session != session.session) {
      continue;
    }
    const std::string safe = safe_temperature(compiled, compiled.kitchen.recipe(making.recipe));
    out += fmt::format(
        "<li>{}, {}{}{}</li>\n", dish_link(compiled, making), how_much(compiled, making),
        safe.empty() ? "" : "; " + heat_mark() + " " + escape(safe), boxes(compiled, making.id));
  }
  return out.empty() ? ""
                     : "<details class=made open><summary>What is made</summary><ul>" + out +
                           "</ul></details>\n";
}

// What is weighed out, for the head of the sheet: "all-purpose flour (Pancake mix 1.1 lb)".
std::string weighed_first(const prep::SessionPlan& session) {
  constexpr std::string_view verb = "Weigh out ";
  std::string out;
  for (const prep::Task& task : session.tasks) {
    if (task.kind == prep::Task::Kind::weigh) {
      std::string_view what = task.what;
      what.remove_prefix(what.starts_with(verb) ? verb.size() : 0);
      out += (out.empty() ? "" : "; ") + std::string(what);
    }
  }
  return out;
}

std::string one(const Compiled& compiled, const prep::SessionPlan& session) {
  const kitchen::Session& window = compiled.plan().sessions[session.session];
  const Axis axis(session);
  std::string out = fmt::format(
      "<article class=\"session{}\" id=session{} data-date={}><h3>{}</h3>\n{}", letters_for(axis),
      session.session, text::print_date(window.date),
      day_head(window.date,
               fmt::format("; {} to {}, done by {}", text::print_clock(window.from),
                           text::print_clock(window.until), clock_in(window, session.length))),
      made_here(compiled, session));
  if (const std::string first = weighed_first(session); !first.empty()) {
    out += "<p class=weigh><b>Weigh out first:</b> " + escape(first) + "</p>\n";
  }
  out += fmt::format("<ol class=axis style=\"--cooks:{};--bars:{}\">\n", window.cooks,
                     appliances_in(compiled, session));
  for (std::size_t c = 0; c < static_cast<std::size_t>(window.cooks); ++c) {
    out += fmt::format("<li class=cook-name aria-hidden=true style=--c:{}>{}</li>", c + 2,
                       escape(cook_heading(window, c)));
  }
  out += fmt::format("<li class=cook-name aria-hidden=true style=--c:{}>By itself</li>\n",
                     window.cooks + 2);
  const std::vector<Cell> places = cells(session, window, axis);
  for (std::size_t t = 0; t < session.tasks.size(); ++t) {
    out += task_item(compiled, session, window, places[t], t);
  }
  out += "<li class=bars aria-hidden=true>" +
         bars(compiled, session, axis, static_cast<std::size_t>(window.cooks) + 3);
  std::size_t line = 1;
  for (const int moment : axis.moments()) {
    out += fmt::format("<time style=--a:{}>{}</time>", line++, clock_in(window, moment));
  }
  return out + "</li></ol></article>\n";
}

} // namespace

std::string cook_section(const Compiled& compiled) {
  std::string out = "<section id=cook aria-labelledby=cook-h><h2 id=cook-h>Cook</h2>\n";
  if (!compiled.prep.sessions.empty()) {
    out += fmt::format("<p class=\"note cooling\">{}</p>\n", escape(cooling(compiled)));
  }
  for (const prep::SessionPlan& session : compiled.prep.sessions) {
    out += one(compiled, session);
  }
  return out + "<div id=dishes></div></section>\n";
}

} // namespace manciple::emit::page
