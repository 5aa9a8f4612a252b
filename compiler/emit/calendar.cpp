// The plan as a calendar (RFC 5545).
//
// Times are local times without a zone ("form 1", RFC 5545 section 3.3.5): half past six is dinner
// on the kitchen's clock, also after a change to daylight-saving time and wherever the phone is. A
// zone would need the rules of its changes beside it, which differ by country and year; a plan that
// knows no zone cannot get them wrong.
//
// UIDs say what an event is (the trip of a day, the soup that is cooked on it, the chicken that
// thaws), so that a plan that is compiled again changes events and neither doubles nor swaps them.
// There is no clock in it: an event that differs from the one of the same UID in the calendar that
// was there before has a higher SEQUENCE and a later DTSTAMP than that (emit/calendar_before), any
// other has the same. So the same plan and the same calendar before give the same bytes.
#include "emit/calendar_before.hpp"
#include "emit/calendar_text.hpp"
#include "emit/day_words.hpp"
#include "emit/emit.hpp"
#include "emit/words.hpp"
#include "kitchen/hours.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace manciple::emit {
namespace {

using text::Date;

// What has no time of its own, or a later one than this, is told once in the evening. Common
// practice, no source.
constexpr int late = 19 * 60;

std::string date_value(Date date) {
  const std::chrono::year_month_day ymd(date);
  return fmt::format("{:04}{:02}{:02}", static_cast<int>(ymd.year()),
                     static_cast<unsigned>(ymd.month()), static_cast<unsigned>(ymd.day()));
}

// Minutes beyond midnight are of the next day.
std::string time_value(Date date, int minutes) {
  const Date day = date + std::chrono::days(minutes / text::minutes_a_day);
  const int of_day = minutes % text::minutes_a_day;
  return fmt::format("{}T{:02}{:02}00", date_value(day), of_day / 60, of_day % 60);
}

// What tells this plan's events from those of another plan or another house (FNV-1a, 64 bits;
// Fowler, Noll and Vo: offset basis 14695981039346656037, prime 1099511628211).
std::string plan_mark(const Compiled& compiled) {
  std::uint64_t hash = 14695981039346656037U;
  const auto add = [&](std::string_view text) {
    for (const char c : text) {
      hash = (hash ^ static_cast<unsigned char>(c)) * 1099511628211U;
    }
    hash = (hash ^ 0xFFU) * 1099511628211U; // ends a text: a byte that UTF-8 never has
  };
  add(compiled.plan().name);
  add(text::print_date(compiled.plan().from));
  for (const kitchen::Person& person : compiled.kitchen.household.people) {
    add(person.name);
  }
  return fmt::format("{:016x}", hash);
}

// A text by which a thing is known again when its amounts have changed: its letters.
std::string without_amounts(std::string_view what) {
  std::string out;
  for (const char c : what) {
    out += text::is_digit(c) || c == '/' || c == '.' ? '-' : c;
  }
  return text::slug(out);
}

class Calendar {
public:
  Calendar(const Compiled& compiled, std::string_view before)
      : compiled_(compiled),
        mark_(plan_mark(compiled)),
        before_(before, date_value(compiled.plan().from) + "T000000Z") {}

  std::string run();

private:
  void line(std::string_view text) { content_ += fold_line(text); }
  void text(std::string_view property, std::string_view value) {
    line(fmt::format("{}:{}", property, escape_text(value)));
  }
  void begin(std::string_view what);
  void end();
  void alarm(std::string_view words);
  void trip(std::size_t first, std::size_t last);
  void session(const prep::SessionPlan& session);
  void cooking(Date date, int ready, const std::vector<const prep::Cooking*>& dishes);
  void meal(std::size_t m);
  void reminder(const prep::Reminder& reminder);
  void digest(Date date, const std::vector<const prep::Reminder*>& things);
  void all_trips();
  void all_cooking();
  void all_reminders();

  const Compiled& compiled_;
  std::string mark_;
  CalendarBefore before_;
  std::map<std::string, int> count_; // events that are the same but for their amounts
  std::string uid_;
  std::string content_; // of the event that is written
  std::string out_;
};

void Calendar::begin(std::string_view what) {
  std::string slug = text::slug(what);
  if (const int number = ++count_[slug]; number > 1) {
    slug += fmt::format("-{}", number);
  }
  uid_ = fmt::format("{}-{}@manciple", slug, mark_);
  content_.clear();
}

void Calendar::end() {
  const CalendarBefore::Stamp stamp = before_.stamp_of(uid_, content_);
  out_ +=
      fold_line("BEGIN:VEVENT") + fold_line("UID:" + uid_) + fold_line("DTSTAMP:" + stamp.time) +
      fold_line(fmt::format("SEQUENCE:{}", stamp.sequence)) + content_ + fold_line("END:VEVENT");
}

void Calendar::alarm(std::string_view words) {
  line("BEGIN:VALARM");
  line("ACTION:DISPLAY");
  line("TRIGGER:PT0S");
  text("DESCRIPTION", words);
  line("END:VALARM");
}

// All the stops of a day. When one sets out is nobody's knowledge but the shopper's, so it is an
// event of the day, not of an hour.
void Calendar::trip(std::size_t first, std::size_t last) {
  const auto& shopping = compiled_.shopping;
  const purchase::StopMade& stop = shopping.visits[first];
  std::vector<std::string> shops;
  std::string stops;
  for (std::size_t v = first; v < last; ++v) {
    const purchase::StopMade& visit = shopping.visits[v];
    const std::string& name = compiled_.kitchen.shop(visit.shop).name;
    shops.push_back(name);
    std::size_t lines = 0;
    for (const purchase::Line& bought : shopping.lines) {
      lines += bought.visit == v ? 1 : 0;
    }
    stops += fmt::format("{}: {} {}{}\n", name, lines, lines == 1 ? "line" : "lines",
                         has_prices(compiled_, v) ? ", " + money(compiled_, visit.paid()) : "");
  }
  if (first == 0) {
    for (const StillToFind& one : still_to_find(compiled_)) {
      stops += fmt::format("Still to find: {}\n", phrase(compiled_, one));
    }
  }
  begin("trip-" + text::print_date(stop.date));
  line("DTSTART;VALUE=DATE:" + date_value(stop.date));
  line("DTEND;VALUE=DATE:" + date_value(stop.date + std::chrono::days(1)));
  text("SUMMARY", "Shopping: " + text::join(shops, ", "));
  text("DESCRIPTION", fmt::format("{}Home by {}.", stops,
                                  text::print_clock(compiled_.plan().trips[stop.trip].home)));
  line("CATEGORIES:SHOPPING");
  line("TRANSP:TRANSPARENT");
  end();
}

void Calendar::session(const prep::SessionPlan& session) {
  const kitchen::Session& window = compiled_.plan().sessions[session.session];
  std::vector<std::string> made;
  for (const resolve::Making& making : compiled_.resolved.makings) {
    if (making.session == session.session) {
      made.push_back(compiled_.kitchen.recipe(making.recipe).name);
    }
  }
  begin(fmt::format("session-{}-{}", text::print_date(window.date), window.from));
  line("DTSTART:" + time_value(window.date, window.from));
  line("DTEND:" + time_value(window.date, window.from + session.length));
  text("SUMMARY", fmt::format("Prep session, {} tasks", session.tasks.size()));
  text("DESCRIPTION",
       fmt::format("{}. {}{}",
                   !window.names.empty()
                       ? text::join(window.names, ", ")
                       : fmt::format("{} {}", window.cooks, window.cooks == 1 ? "cook" : "cooks"),
                   made.empty() ? "" : "Makes " + text::join(made, ", ") + ".\n", caution));
  line("CATEGORIES:COOKING");
  end();
}

// What is begun for one meal: from the first dish's start until it is ready.
void Calendar::cooking(Date date, int ready, const std::vector<const prep::Cooking*>& dishes) {
  std::vector<std::string> names;
  std::vector<std::string> cooks;
  std::string description;
  int start = ready;
  for (const prep::Cooking* cook : dishes) {
    const resolve::Making& making = compiled_.resolved.making(cook->making);
    const std::string& name = compiled_.kitchen.recipe(making.recipe).name;
    names.push_back(name);
    start = std::min(start, cook->start);
    for (const std::string& who : cook->cooks) {
      if (std::find(cooks.begin(), cooks.end(), who) == cooks.end()) {
        cooks.push_back(who);
      }
    }
    description += fmt::format(
        "{} {}{}, {}\n", text::print_clock(cook->start % text::minutes_a_day),
        cook->cooks.empty() ? "" : cooks_of(*cook) + ": ", name, how_much(compiled_, making));
  }
  begin(fmt::format("cook-{}-{}", text::print_date(date), ready));
  line("DTSTART:" + time_value(date, start));
  line("DTEND:" + time_value(date, std::max(ready, start + 1)));
  text("SUMMARY", fmt::format("{}: {}", cooks.empty() ? "Cook" : "Cook, " + text::join(cooks, ", "),
                              text::join(names, ", ")));
  text("DESCRIPTION", description.substr(0, description.size() - 1));
  line("CATEGORIES:COOKING");
  end();
}

void Calendar::meal(std::size_t m) {
  const kitchen::Meal& meal = compiled_.plan().meals[m];
  begin(fmt::format("meal-{}-{}", text::print_date(meal.date), meal.slot));
  line("DTSTART:" +
       time_value(meal.date, compiled_.kitchen.household.slot(meal.slot)->hour(meal.date)));
  text("SUMMARY", fmt::format("{}: {}", meal.slot, dishes_of(compiled_, m)));
  std::string reheat;
  for (std::size_t d = 0; d < meal.dishes.size(); ++d) {
    if (const auto how = how_to_reheat(compiled_, {m, d})) {
      reheat += fmt::format("{}Reheat {}: {}", reheat.empty() ? "" : "\n",
                            dish_name(compiled_, meal.dishes[d]), *how);
    }
  }
  if (!reheat.empty()) {
    text("DESCRIPTION", reheat);
  }
  line("CATEGORIES:MEAL");
  line("TRANSP:TRANSPARENT");
  end();
}

// A moment, with an alarm when it comes.
void Calendar::reminder(const prep::Reminder& reminder) {
  begin(fmt::format("{}-{}-{}", word(reminder.kind), text::print_date(reminder.date),
                    without_amounts(reminder.what)));
  line("DTSTART:" + time_value(reminder.date, *reminder.clock));
  text("SUMMARY", reminder.what);
  line("CATEGORIES:KITCHEN");
  line("TRANSP:TRANSPARENT");
  alarm(reminder.what);
  end();
}

// What is done in an evening, with one alarm: "In the evening: thaw, freeze (4), soak".
void Calendar::digest(Date date, const std::vector<const prep::Reminder*>& things) {
  std::vector<std::pair<std::string_view, int>> kinds;
  std::string description;
  for (const prep::Reminder* thing : things) {
    const std::string_view kind =
        thing->kind == prep::Reminder::Kind::leftovers ? "put away" : word(thing->kind);
    const auto same = std::find_if(kinds.begin(), kinds.end(),
                                   [&](const auto& one) { return one.first == kind; });
    if (same == kinds.end()) {
      kinds.emplace_back(kind, 1);
    } else {
      ++same->second;
    }
    description +=
        fmt::format("{}{}{}{}", description.empty() ? "" : "\n",
                    thing->clock ? text::print_clock(*thing->clock) + " " : "",
                    thing->kind == prep::Reminder::Kind::use_up ? "Use up " : "", thing->what);
  }
  std::vector<std::string> words;
  for (const auto& [kind, count] : kinds) {
    words.push_back(count > 1 ? fmt::format("{} ({})", kind, count) : std::string(kind));
  }
  const std::string summary = "In the evening: " + text::join(words, ", ");
  begin("evening-" + text::print_date(date));
  line("DTSTART:" + time_value(date, kitchen::evening));
  text("SUMMARY", summary);
  text("DESCRIPTION", description);
  line("CATEGORIES:KITCHEN");
  line("TRANSP:TRANSPARENT");
  alarm(summary);
  end();
}

void Calendar::all_trips() {
  const auto& visits = compiled_.shopping.visits;
  for (std::size_t v = 0; v < visits.size();) {
    std::size_t last = v;
    while (last < visits.size() && visits[last].date == visits[v].date) {
      ++last;
    }
    trip(v, last);
    v = last;
  }
}

void Calendar::all_cooking() {
  std::map<std::pair<Date, int>, std::vector<const prep::Cooking*>> meals;
  for (const prep::Cooking& cook : compiled_.prep.cooking) {
    if (is_work(compiled_, cook)) {
      meals[{cook.date, cook.ahead ? cook.done : cook.ready}].push_back(&cook);
    }
  }
  for (const auto& [when, dishes] : meals) {
    cooking(when.first, when.second, dishes);
  }
}

void Calendar::all_reminders() {
  std::map<Date, std::vector<const prep::Reminder*>> evenings;
  for (const prep::Reminder& one : compiled_.prep.reminders) {
    if (one.clock && *one.clock < late) {
      reminder(one);
    } else {
      evenings[one.date].push_back(&one);
    }
  }
  for (auto& [date, things] : evenings) {
    std::stable_sort(things.begin(), things.end(), [](const auto* a, const auto* b) {
      return a->clock.value_or(0) < b->clock.value_or(0);
    });
    digest(date, things);
  }
}

std::string Calendar::run() {
  all_trips();
  for (const prep::SessionPlan& one : compiled_.prep.sessions) {
    session(one);
  }
  all_cooking();
  for (std::size_t m = 0; m < compiled_.plan().meals.size(); ++m) {
    meal(m);
  }
  all_reminders();
  content_.clear();
  line("BEGIN:VCALENDAR");
  line("VERSION:2.0");
  line("PRODID:" + std::string(product));
  // Times are the kitchen's own (RFC 5545: floating). This is no standard, but most calendars know
  // it as the zone of such times.
  if (!compiled_.kitchen.household.time_zone.empty()) {
    line("X-WR-TIMEZONE:" + compiled_.kitchen.household.time_zone);
  }
  line("CALSCALE:GREGORIAN");
  text("NAME", compiled_.plan().name);         // RFC 7986
  text("X-WR-CALNAME", compiled_.plan().name); // what calendars understood before it, and most do
  return content_ + out_ + fold_line("END:VCALENDAR");
}

} // namespace

std::string calendar_ics(const Compiled& compiled, std::string_view before) {
  return Calendar(compiled, before).run();
}

} // namespace manciple::emit
