#include "emit/prep_json.hpp"

#include "emit/words.hpp"
#include "kitchen/table.hpp"

namespace manciple::emit::json {
namespace {

std::string_view kind_of(prep::Task::Kind kind) {
  switch (kind) {
  case prep::Task::Kind::weigh:
    return "weigh";
  case prep::Task::Kind::cut:
    return "cut";
  case prep::Task::Kind::cook:
    return "cook";
  case prep::Task::Kind::portion:
    return "portion";
  case prep::Task::Kind::preheat:
    return "preheat";
  case prep::Task::Kind::cool:
    return "cool";
  case prep::Task::Kind::store:
    return "store";
  case prep::Task::Kind::wash:
    return "wash";
  }
  return {};
}

std::string_view kind_of(prep::Reminder::Kind kind) {
  switch (kind) {
  case prep::Reminder::Kind::thaw:
    return "thaw";
  case prep::Reminder::Kind::soak:
    return "soak";
  case prep::Reminder::Kind::marinate:
    return "marinate";
  case prep::Reminder::Kind::ripen:
    return "ripen";
  case prep::Reminder::Kind::freeze:
    return "freeze";
  case prep::Reminder::Kind::use_up:
    return "use up";
  case prep::Reminder::Kind::leftovers:
    return "leftovers";
  case prep::Reminder::Kind::pack:
    return "pack";
  }
  return {};
}

Json sessions(const Compiled& compiled) {
  Json out = Json::array();
  for (const prep::SessionPlan& session : compiled.prep.sessions) {
    const kitchen::Session& window = compiled.plan().sessions[session.session];
    Json tasks = Json::array();
    for (const prep::Task& task : session.tasks) {
      tasks.push_back(
          {{"start", task.start},
           {"hands_on", task.hands_on},
           {"then", task.then},
           {"cook", task.cook ? Json(*task.cook) : Json(nullptr)},
           {"kind", kind_of(task.kind)},
           {"appliance", task.appliance},
           {"places", task.places},
           {"vessel", task.vessel},
           {"vessels", task.vessels},
           {"fahrenheit", maybe(task.fahrenheit)},
           {"by", maybe(task.by)},
           {"step", task.step ? Json(*task.step) : Json(nullptr)},
           {"what", task.what},
           {"for", task.purpose},
           {"making", task.making ? Json(static_cast<std::size_t>(*task.making)) : Json(nullptr)},
           {"after", task.after}});
    }
    out.push_back({{"session", session.session},
                   {"date", date(window.date)},
                   {"from", window.from},
                   {"until", window.until},
                   {"cooks", window.cooks},
                   {"names", window.names},
                   {"length", session.length},
                   {"bound", session.bound},
                   {"tasks", tasks}});
  }
  return out;
}

Json days(const Compiled& compiled) {
  Json out = Json::array();
  for (const prep::Reminder& reminder : compiled.prep.reminders) {
    out.push_back({{"date", date(reminder.date)},
                   {"kind", kind_of(reminder.kind)},
                   {"clock", maybe(reminder.clock)},
                   {"making", reminder.making ? Json(static_cast<std::size_t>(*reminder.making))
                                              : Json(nullptr)},
                   {"lasts", maybe(reminder.lasts)},
                   {"what", reminder.what}});
  }
  return out;
}

// Who is there to cook, outside the sessions, where household or plan say so.
Json shifts(const Compiled& compiled) {
  Json out = Json::array();
  const kitchen::Plan& plan = compiled.plan();
  std::set<text::Date> days;
  for (text::Date day = plan.from; day <= plan.until; day += std::chrono::days(1)) {
    days.insert(day);
  }
  for (const prep::Cooking& cook : compiled.prep.cooking) {
    days.insert(cook.date);
  }
  for (const text::Date day : days) {
    for (const kitchen::Shift& shift : kitchen::shifts(compiled.kitchen, day)) {
      Json cooks = Json::array();
      for (const kitchen::Cook& cook : shift.cooks) {
        cooks.push_back({{"name", cook.name}, {"from", cook.from}, {"until", cook.until}});
      }
      if (!cooks.empty()) {
        out.push_back({{"date", date(day)},
                       {"from", shift.from},
                       {"until", shift.until},
                       {"cooks", std::move(cooks)}});
      }
    }
  }
  return out;
}

Json cooking(const Compiled& compiled) {
  Json out = Json::array();
  for (const prep::Cooking& cook : compiled.prep.cooking) {
    Json steps = Json::array();
    for (const prep::Cooking::Step& step : cook.steps) {
      steps.push_back({{"step", step.step},
                       {"what", step.what},
                       {"start", step.start},
                       {"hands_on", step.hands_on},
                       {"then", step.then},
                       {"appliance", step.appliance},
                       {"places", step.places},
                       {"vessel", step.vessel},
                       {"vessels", step.vessels},
                       {"who", step.who},
                       {"fahrenheit", maybe(step.fahrenheit)},
                       {"preheat", step.preheat},
                       {"wash", step.wash}});
    }
    out.push_back({{"making", static_cast<std::size_t>(cook.making)},
                   {"date", date(cook.date)},
                   {"start", cook.start},
                   {"done", cook.done},
                   {"ready", cook.ready},
                   {"ahead", cook.ahead},
                   {"stands_from", maybe(cook.stands_from)},
                   {"first_for", cook.first_for},
                   {"cooks", cook.cooks},
                   {"steps", std::move(steps)}});
  }
  return out;
}

} // namespace

void add_prep(Json& out, const Compiled& compiled) {
  out["sessions"] = sessions(compiled);
  out["shifts"] = shifts(compiled);
  out["cooking"] = cooking(compiled);
  out["reminders"] = days(compiled);
}

} // namespace manciple::emit::json
