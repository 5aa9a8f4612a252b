// The plan as a calendar (RFC 5545).
//
// Times are local times without a zone ("form 1", RFC 5545 section 3.3.5): half past six is dinner
// on the kitchen's clock, also after a change to daylight-saving time and wherever the phone is. A
// zone would need the rules of its changes beside it, which differ by country and year; a plan that
// knows no zone cannot get them wrong.
//
// The same plan gives the same bytes, so there is no clock in it: DTSTAMP, which RFC 5545 wants to
// be when the file was made, is the plan's first day. UIDs say what an event is (the trip of a day,
// the second thing to thaw of a day), not what it contains, so that a plan that is compiled again
// changes events and doubles none.
#include "emit/calendar_text.hpp"
#include "emit/day_words.hpp"
#include "emit/emit.hpp"
#include "emit/words.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <map>

namespace manciple::emit {
namespace {

using text::Date;

// What has no time of its own is done in the evening.
constexpr int evening = 18 * 60;

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

class Calendar {
public:
  explicit Calendar(const Compiled& compiled)
      : compiled_(compiled),
        mark_(plan_mark(compiled)),
        stamp_(date_value(compiled.plan().from) + "T000000Z") {}

  std::string run();

private:
  void line(std::string_view text) { out_ += fold_line(text); }
  void text(std::string_view property, std::string_view value) {
    line(fmt::format("{}:{}", property, escape_text(value)));
  }
  void begin(std::string_view what, Date date);
  void end() { line("END:VEVENT"); }
  void trip(std::size_t first, std::size_t last);
  void session(const prep::SessionPlan& session);
  void reminder(const prep::Reminder& reminder);

  const Compiled& compiled_;
  std::string mark_;
  std::string stamp_;
  std::map<std::pair<std::string, Date>, int> count_; // events of a kind on a day
  std::string out_;
};

void Calendar::begin(std::string_view what, Date date) {
  const int number = ++count_[{std::string(what), date}];
  line("BEGIN:VEVENT");
  line(fmt::format("UID:{}-{}-{}-{}@manciple", text::slug(what), text::print_date(date), number,
                   mark_));
  line("DTSTAMP:" + stamp_);
  line("SEQUENCE:0");
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
  begin("trip", stop.date);
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
  begin("session", window.date);
  line("DTSTART:" + time_value(window.date, window.from));
  line("DTEND:" + time_value(window.date, window.from + session.length));
  text("SUMMARY", fmt::format("Prep session, {} tasks", session.tasks.size()));
  text("DESCRIPTION",
       fmt::format("{} {}. {}{}", window.cooks, window.cooks == 1 ? "cook" : "cooks",
                   made.empty() ? "" : "Makes " + text::join(made, ", ") + ".\n", caution));
  line("CATEGORIES:COOKING");
  end();
}

// A moment, with an alarm when it comes.
void Calendar::reminder(const prep::Reminder& reminder) {
  begin(word(reminder.kind), reminder.date);
  line("DTSTART:" + time_value(reminder.date, reminder.clock.value_or(evening)));
  text("SUMMARY", reminder.what);
  line("CATEGORIES:KITCHEN");
  line("TRANSP:TRANSPARENT");
  line("BEGIN:VALARM");
  line("ACTION:DISPLAY");
  line("TRIGGER:PT0S");
  text("DESCRIPTION", reminder.what);
  line("END:VALARM");
  end();
}

std::string Calendar::run() {
  line("BEGIN:VCALENDAR");
  line("VERSION:2.0");
  line("PRODID:-//manciple//month plan//EN");
  // Times are the kitchen's own (RFC 5545: floating). This is no standard, but most calendars know
  // it as the zone of such times.
  if (!compiled_.kitchen.household.time_zone.empty()) {
    line("X-WR-TIMEZONE:" + compiled_.kitchen.household.time_zone);
  }
  line("CALSCALE:GREGORIAN");
  text("NAME", compiled_.plan().name); // RFC 7986
  const auto& visits = compiled_.shopping.visits;
  for (std::size_t v = 0; v < visits.size();) {
    std::size_t last = v;
    while (last < visits.size() && visits[last].date == visits[v].date) {
      ++last;
    }
    trip(v, last);
    v = last;
  }
  for (const prep::SessionPlan& one : compiled_.prep.sessions) {
    session(one);
  }
  for (const prep::Reminder& one : compiled_.prep.reminders) {
    reminder(one);
  }
  line("END:VCALENDAR");
  return std::move(out_);
}

} // namespace

std::string calendar_ics(const Compiled& compiled) {
  return Calendar(compiled).run();
}

} // namespace manciple::emit
