#include "emit/day_words.hpp"
#include "emit/lanes.hpp"
#include "emit/page/html.hpp"
#include "emit/page/parts.hpp"
#include "emit/page/session_sheets.hpp"
#include "emit/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace manciple::emit::page {
namespace {

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

// What of two lines of the axis stands on a sheet, counted from its first line.
struct Span {
  std::size_t from = 0;
  std::size_t to = 0;
};
std::optional<Span> on_sheet(const SheetLines& sheet, std::size_t from, std::size_t to) {
  if (to <= sheet.from || from >= sheet.to) {
    return std::nullopt;
  }
  return Span{std::max(from, sheet.from) - sheet.from + 1, std::min(to, sheet.to) - sheet.from + 1};
}

// Appliances as thin bars beside the cooks: their names stand above, and what they do in the row at
// which they start.
std::string bars(const Compiled& compiled, const prep::SessionPlan& session, const Axis& axis,
                 const SheetLines& sheet, std::size_t first_column) {
  std::string out;
  std::size_t column = first_column;
  for (const Lane& lane : lanes(compiled, session)) {
    if (lane.group == "cook") {
      continue;
    }
    out += fmt::format("<div class=bar-name style=--c:{}>{}</div>", column, escape(lane.name));
    for (const Block& block : lane.blocks) {
      const std::size_t from = axis.line(block.start);
      if (const auto span = on_sheet(sheet, from, std::max(from + 1, axis.line(block.end)))) {
        out += fmt::format("<div class=busy style=\"--c:{};--a:{};--b:{}\"></div>", column,
                           span->from, span->to);
      }
    }
    ++column;
  }
  return out;
}

// The names of the appliances that have a bar.
std::vector<std::string> appliances_in(const Compiled& compiled, const prep::SessionPlan& session) {
  std::vector<std::string> out;
  for (const Lane& lane : lanes(compiled, session)) {
    if (lane.group != "cook") {
      out.push_back(lane.name);
    }
  }
  return out;
}

// Whether something starts without a hand, and has a column of its own for that.
bool starts_by_itself(const prep::SessionPlan& session) {
  return std::any_of(session.tasks.begin(), session.tasks.end(),
                     [](const prep::Task& task) { return !task.cook; });
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

// Without its marks, so many letters.
std::size_t letters_in(std::string_view html) {
  std::size_t count = 0;
  bool inside = false;
  for (const char c : html) {
    inside = c == '<' || (inside && c != '>');
    count += inside || c == '>' ? 0 : 1;
  }
  return count;
}

// The cooks beside their axis of time, as far as it stands on one sheet.
std::string axis_on(const Compiled& compiled, const prep::SessionPlan& session, const Axis& axis,
                    const std::vector<Cell>& places, const SheetLines& sheet) {
  const kitchen::Session& window = compiled.plan().sessions[session.session];
  const auto cooks = static_cast<std::size_t>(window.cooks);
  const bool first = sheet.from == 1;
  std::string out =
      first
          ? ""
          : fmt::format(
                "<p class=again>{}, from {}</p>", text::print_day(window.date),
                clock_in(window, axis.moments()[std::min(sheet.from, axis.moments().size()) - 1]));
  const bool alone = starts_by_itself(session);
  out += fmt::format("<ol class=\"axis{}{}\" style=\"--cooks:{};--appliances:{}\">\n",
                     first ? "" : " more", alone ? "" : " by-hand", cooks,
                     appliances_in(compiled, session).size());
  for (std::size_t c = 0; c < cooks + (alone ? 1 : 0); ++c) {
    out += c < cooks ? fmt::format("<li class=cook-name aria-hidden=true style=--c:{}>{}</li>",
                                   c + 2, escape(cook_heading(window, c)))
                     : fmt::format("<li class=\"cook-name itself\" aria-hidden=true "
                                   "style=--c:{}>By itself</li>",
                                   c + 2);
  }
  for (std::size_t t = 0; t < session.tasks.size(); ++t) {
    if (places[t].from >= sheet.from && places[t].from < sheet.to) {
      const auto span = *on_sheet(sheet, places[t].from, places[t].to);
      out += task_item(compiled, session, window, {places[t].column, span.from, span.to}, t);
    }
  }
  out += "<li class=bars aria-hidden=true>" + bars(compiled, session, axis, sheet, cooks + 3);
  // A moment stands at its line, the end of the session below the last one.
  const std::size_t moments = axis.moments().size();
  for (std::size_t line = sheet.from; line <= std::min(sheet.to, moments); ++line) {
    if (line < sheet.to || line == moments) {
      out += fmt::format("<time style=--a:{}>{}</time>", line - sheet.from + 1,
                         clock_in(window, axis.moments()[line - 1]));
    }
  }
  return out + "</li></ol>\n";
}

std::string one(const Compiled& compiled, const prep::SessionPlan& session) {
  const kitchen::Session& window = compiled.plan().sessions[session.session];
  const Axis axis(session);
  std::string work = made_here(compiled, session);
  if (const std::string first = weighed_first(session); !first.empty()) {
    work += "<p class=weigh><b>Weigh out first:</b> " + escape(first) + "</p>\n";
  }
  const auto cooks = static_cast<std::size_t>(window.cooks);
  SheetContent content;
  content.cells = cells(session, cooks, axis);
  content.lines = axis.moments().size();
  for (const Cell& cell : content.cells) { // what starts at one moment stands below each other
    content.lines = std::max(content.lines, cell.to);
  }
  content.cooks = cooks;
  content.alone = starts_by_itself(session);
  for (const std::string& appliance : appliances_in(compiled, session)) {
    ++content.bars;
    content.bar_letters = std::max(content.bar_letters, appliance.size());
  }
  content.head_letters = letters_in(work);
  for (const prep::Task& task : session.tasks) {
    const auto degrees =
        task.fahrenheit ? std::optional(on_the_dial(compiled, *task.fahrenheit)) : std::nullopt;
    content.letters.push_back(task.what.size() + 1 + letters_in(takes(task, window, degrees)));
  }
  for (const SheetLines& sheet : sheets_of(content)) {
    work += axis_on(compiled, session, axis, content.cells, sheet);
  }
  return fmt::format(
      "<article class=session id=session{} data-date={}><h3>{}</h3>\n{}</article>\n",
      session.session, text::print_date(window.date),
      day_head(window.date,
               fmt::format("; {} to {}, done by {}", text::print_clock(window.from),
                           text::print_clock(window.until), clock_in(window, session.length))),
      folded(work));
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
