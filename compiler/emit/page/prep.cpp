#include "emit/day_words.hpp"
#include "emit/lanes.hpp"
#include "emit/page/html.hpp"
#include "emit/page/parts.hpp"
#include "emit/words.hpp"
#include "measure/print.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::emit::page {
namespace {

// Of the drawing: a minute of work, the names of the lanes above it, the least block that holds its
// number. Lengths down are pixels and places across are shares, so that nothing shrinks on a phone.
constexpr int pixels_a_minute = 3;
constexpr int head = 100;
constexpr int room_for_number = 12;
constexpr double axis = 0.13;
// As many as the style has colours for.
constexpr std::size_t colours = 6;

// Each dish of the session has a colour; what is cut for several has none.
std::string colour_of(const prep::SessionPlan& session, const prep::Task& task) {
  if (!task.making) {
    return "bn";
  }
  std::vector<resolve::MakingId> seen;
  for (const prep::Task& other : session.tasks) {
    if (other.making && std::find(seen.begin(), seen.end(), *other.making) == seen.end()) {
      if (*other.making == *task.making) {
        break;
      }
      seen.push_back(*other.making);
    }
  }
  return fmt::format("b{}", seen.size() % colours);
}

// Time runs down, each cook and appliance has a column. The tables below say the same in words.
std::string drawing(const Compiled& compiled, const prep::SessionPlan& session) {
  const kitchen::Session& window = compiled.plan().sessions[session.session];
  const std::vector<Lane> columns = lanes(compiled, session);
  const double width = (1 - axis) / static_cast<double>(std::max<std::size_t>(1, columns.size()));
  std::string out;
  out +=
      fmt::format("<svg class=time role=img aria-label=\"Who and what is busy from {} to {}; the "
                  "tables say the same in words\" width=\"100%\" height={}>\n",
                  text::print_clock(window.from), clock_in(window, session.length),
                  head + session.length * pixels_a_minute + 8);
  for (int t = 0; t <= session.length; t += 30) {
    const int y = head + t * pixels_a_minute;
    out += fmt::format("<line class=grid x1={} x2=\"100%\" y1={y} y2={y} /><text class=axis x=0 "
                       "y={}>{}</text>\n",
                       percent(axis), y + 4, clock_in(window, t), fmt::arg("y", y));
  }
  for (std::size_t c = 0; c < columns.size(); ++c) {
    const Lane& lane = columns[c];
    const double left = axis + width * static_cast<double>(c);
    // A name that is too long ends at the drawing's upper edge.
    out += fmt::format(
        "<svg x={} y=0 width=24 height={}><text class=lane transform=\"translate(13 {}) "
        "rotate(-90)\">{}</text></svg>\n",
        percent(left + width * 0.25), head, head - 6, escape(lane.name));
    for (const Block& block : lane.blocks) {
      const prep::Task& task = session.tasks[block.task];
      const int alone =
          lane.group == "cook" ? block.end : std::min(block.end, block.start + task.hands_on);
      const std::string colour = colour_of(session, task);
      const int y = head + block.start * pixels_a_minute;
      const int hands = (alone - block.start) * pixels_a_minute;
      const int rest = (block.end - alone) * pixels_a_minute;
      const auto rect = [&](int top, int height, std::string_view kind) {
        if (height > 0) {
          out += fmt::format("<rect class=\"{}{}\" x={} y={} width={} height={} />", colour, kind,
                             percent(left + width * 0.06), top, percent(width * 0.88),
                             std::max(1, height - 1));
        }
      };
      rect(y, hands, "");
      rect(y + hands, rest, " alone");
      const bool on_hands = hands >= room_for_number;
      const int room = on_hands ? hands : rest;
      if (room >= room_for_number) {
        out += fmt::format("<text class=\"no{}\" x={} y={}>{}</text>", on_hands ? "" : " rest",
                           percent(left + width * 0.5),
                           (on_hands ? y : y + hands) + std::min(room, 20) / 2 + 4, block.task + 1);
      }
      out += "\n";
    }
  }
  return out + "</svg>\n";
}

std::string task_row(const prep::SessionPlan& session, const kitchen::Session& window,
                     std::size_t t) {
  const prep::Task& task = session.tasks[t];
  std::string then;
  if (task.hands_on > 0) {
    then += text::print_minutes(task.hands_on);
  }
  if (task.then > 0) {
    then +=
        fmt::format("{}{} alone", then.empty() ? "" : ", then ", text::print_minutes(task.then));
  }
  if (!task.appliance.empty()) {
    then += (then.empty() ? "" : "; ") + escape(task.appliance);
  }
  return fmt::format("<tr><td><time>{}</time><td><i class=\"key {}\">{}</i><td>{}{}<td>{}</tr>\n",
                     clock_in(window, task.start), colour_of(session, task), t + 1, name(task.what),
                     task.purpose.empty() ? "" : " <small>for " + name(task.purpose) + "</small>",
                     then);
}

// A cook's tasks, or what nobody's hands are needed for.
std::string sheet(const Compiled& compiled, const prep::SessionPlan& session,
                  std::optional<std::size_t> cook) {
  const kitchen::Session& window = compiled.plan().sessions[session.session];
  std::string rows;
  for (std::size_t t = 0; t < session.tasks.size(); ++t) {
    rows += session.tasks[t].cook == cook ? task_row(session, window, t) : "";
  }
  if (rows.empty()) {
    return {};
  }
  return fmt::format(
      "<div class=\"{}\"><h4>{} <small>{}</small></h4><table><thead><tr><th scope=col>At<th "
      "scope=col aria-label=Number>#<th scope=col>What<th "
      "scope=col>Takes</tr></thead><tbody>\n{}</tbody></table>"
      "</div>\n",
      cook ? "sheet" : "sheet alone", cook ? name(cook_heading(window, *cook)) : "Nobody's hands",
      text::print_day(window.date), rows);
}

std::string one(const Compiled& compiled, const prep::SessionPlan& session) {
  const kitchen::Session& window = compiled.plan().sessions[session.session];
  std::string out;
  out +=
      fmt::format("<article class=session id=session{}><h3>{}, {} to {}</h3><p>Done by {}{}.</p>\n",
                  session.session, text::print_day(window.date), text::print_clock(window.from),
                  text::print_clock(window.until), clock_in(window, session.length),
                  session.length == session.bound ? "; no order of work is faster" : "");
  std::string makes;
  for (const resolve::Making& making : compiled.resolved.makings) {
    if (making.session == session.session) {
      const kitchen::Recipe& recipe = compiled.kitchen.recipe(making.recipe);
      const std::string safe = safe_temperature(compiled, recipe);
      makes += fmt::format(
          "<li><b>{}</b>, {}, for {}{}</li>\n", name(recipe.name), how_much(compiled, making),
          name(prep::purposes(compiled.kitchen, compiled.resolved, making.id)),
          (safe.empty() ? "" : "; " + escape(safe)) + escape(boxes_of(compiled, making.id)));
    }
  }
  out += fmt::format("<div class=work><div class=plan>{}{}</div><div class=sheets>\n",
                     makes.empty() ? "" : "<h4>What is made</h4><ul>" + makes + "</ul>",
                     drawing(compiled, session));
  for (std::size_t c = 0; c < static_cast<std::size_t>(window.cooks); ++c) {
    out += sheet(compiled, session, c);
  }
  out += sheet(compiled, session, std::nullopt);
  return out + "</div></div></article>\n";
}

} // namespace

std::string prep_section(const Compiled& compiled) {
  std::string out = "<section id=prep aria-labelledby=prep-h><h2 id=prep-h>Prep sessions</h2>\n";
  if (compiled.prep.sessions.empty()) {
    out += "<p>Nothing is prepared ahead.</p>\n";
  } else {
    out += fmt::format("<p class=note>In the drawings time runs down; a full bar is hands at work, "
                       "a pale one goes on alone. Numbers are those of the tables.</p><p "
                       "class=note>{}</p>\n",
                       cooling(compiled));
  }
  for (const prep::SessionPlan& session : compiled.prep.sessions) {
    out += one(compiled, session);
  }
  return out + "</section>\n";
}

} // namespace manciple::emit::page
