// The whole result, for other programs: its parts one after the other.
#include "emit/currency_json.hpp"
#include "emit/emit.hpp"
#include "emit/list_json.hpp"
#include "emit/nutrition_json.hpp"
#include "emit/past_json.hpp"
#include "emit/plan_json.hpp"
#include "emit/prep_json.hpp"
#include "emit/result_form.hpp"
#include "emit/words.hpp"

namespace manciple::emit {

std::string result_json(const Compiled& compiled) {
  using json::Json;
  const auto& plan = compiled.plan();
  const auto& shopping = compiled.shopping;
  Json appliances = Json::object();
  for (const kitchen::Appliance& appliance : compiled.kitchen.household.appliances) {
    appliances[appliance.name] = appliance.count;
  }
  const auto budget = plan.budget ? plan.budget : compiled.kitchen.household.budget;
  Json out{{"form", result_form},
           {"plan", plan.name},
           {"from", json::date(plan.from)},
           {"until", json::date(plan.until)},
           {"currency", currency_json(compiled)},
           {"paid", shopping.paid},
           {"cash_back", shopping.cash_back},
           {"stop_costs", shopping.stop_costs},
           {"budget", json::maybe(budget)},
           {"proven", shopping.proven()},
           {"stopped_by_hand", shopping.stopped_by_hand()},
           {"appliances", appliances}};
  json::add_plan(out, compiled);
  json::add_list(out, compiled);
  out["nutrition"] = nutrition_json(compiled);
  json::add_prep(out, compiled);
  out["caution"] = caution;
  if (compiled.past) {
    out["past"] = past_json(compiled.kitchen, *compiled.past);
  }
  return out.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace manciple::emit
