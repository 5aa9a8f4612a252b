// Commands about what files can say.
#include "cli/command_line.hpp"
#include "cli/commands.hpp"
#include "cli/exit.hpp"
#include "cli/house_here.hpp"
#include "cli/report.hpp"
#include "cli/say.hpp"
#include "kitchen/household.hpp"
#include "kitchen/keys.hpp"
#include "text/nearest.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <vector>

namespace manciple::cli {
namespace {

struct KeysRequest {
  std::string kind;     ///< empty: all kinds
  std::string measures; ///< those of the examples; empty: as the house here measures
};

struct SchemaRequest {
  std::string kind;
};

using kitchen::keys::Kind;
using Json = nlohmann::ordered_json;
using measure::System;
using text::Keys;
using text::Value;

const Kind* find_kind(const std::string& name) {
  const auto kinds = kitchen::keys::kinds;
  const auto found =
      std::find_if(kinds.begin(), kinds.end(), [&](const Kind& kind) { return kind.name == name; });
  if (found != kinds.end()) {
    return &*found;
  }
  std::vector<std::string_view> known;
  for (const Kind& kind : kinds) {
    known.push_back(kind.name);
  }
  complain_of_name("there is no kind of file", name, text::did_you_mean(name, known));
  return nullptr;
}

// Whether the household of the folder measures so.
bool is_metric_here() {
  const auto household = household_here();
  return household && kitchen::system_of(*household) == System::metric;
}

void say_keys(const Keys& keys, std::size_t indent, bool metric);

// The keys that stand deeper inside a value.
void say_inside(const Value& value, std::size_t indent, bool metric) {
  if (value.keys != nullptr) {
    say_keys(*value.keys, indent, metric);
  }
  if (value.each != nullptr) {
    say_inside(*value.each, indent, metric);
  }
  if (value.items != nullptr) {
    say_inside(*value.items, indent, metric);
  }
}

void say_keys(const Keys& keys, std::size_t indent, bool metric) {
  for (const text::Key& key : keys.keys) {
    const std::string name = std::string(indent, ' ') + std::string(key.name);
    say("  {:<24}{}{}: {}\n", name, key.needed ? "needed; " : "", key.value->words, key.doc);
    say("  {:<24}  {}: {}\n", "", key.name, key.value->example_for(metric));
    say_inside(*key.value, indent + 2, metric);
  }
}

void say_kind(const Kind& kind, bool metric) {
  say("{} ({})\n", kind.name, kind.path);
  say_inside(*kind.value, 0, metric);
}

Json schema_of(const Value& value);

// YAML reads 4 as a number and yes as a truth value; to manciple both are texts.
Json text_schema() {
  return {{"type", {"string", "number", "boolean"}}};
}

Json schema_of(const Keys& keys) {
  Json properties = Json::object();
  Json needed = Json::array();
  for (const text::Key& key : keys.keys) {
    Json one = schema_of(*key.value);
    one["description"] = key.doc;
    properties[std::string(key.name)] = std::move(one);
    if (key.needed) {
      needed.push_back(key.name);
    }
  }
  Json out{{"type", "object"}, {"properties", std::move(properties)}};
  if (!needed.empty()) {
    out["required"] = std::move(needed);
  }
  out["additionalProperties"] = false;
  return out;
}

Json schema_of(const Value& value) {
  Json any = Json::array();
  if (value.text) {
    any.push_back(text_schema());
  }
  if (value.keys != nullptr) {
    any.push_back(schema_of(*value.keys));
  }
  if (value.each != nullptr) {
    any.push_back({{"type", "object"}, {"additionalProperties", schema_of(*value.each)}});
  }
  if (value.items != nullptr) {
    Json item = schema_of(*value.items);
    any.push_back({{"type", "array"}, {"items", item}});
    any.push_back(std::move(item));
  }
  if (value.each != nullptr || value.items != nullptr) {
    any.push_back({{"type", "null"}}); // nothing written after the key
  }
  return any.size() == 1 ? Json(any.front()) : Json{{"anyOf", std::move(any)}};
}

int keys(const KeysRequest& request) {
  const auto& [kind, measures] = request;
  const bool metric =
      measures.empty() ? is_metric_here() : measure::parse_system(measures) == System::metric;
  if (!kind.empty()) {
    const Kind* known = find_kind(kind);
    if (known == nullptr) {
      return bad_input;
    }
    say_kind(*known, metric);
    return good;
  }
  for (const Kind& each : kitchen::keys::kinds) {
    say_kind(each, metric);
    say("\n");
  }
  return good;
}

int schema(const SchemaRequest& request) {
  const Kind* known = find_kind(request.kind);
  if (known == nullptr) {
    return bad_input;
  }
  Json out{{"$schema", "https://json-schema.org/draft/2020-12/schema"},
           {"title", fmt::format("{} of manciple", known->path)}};
  out.update(schema_of(*known->value));
  say("{}\n", out.dump(1));
  return good;
}

} // namespace

void add_keys(CommandLine& to) {
  auto [command, asked] = to.add<KeysRequest>(
      "keys", "what a file can say: every key, what values it takes, and what it means", keys);
  command.add_option("KIND", asked.kind,
                     "recipe, foods, household, on-hand, receipt, shop or plan (default: all)");
  command
      .add_option("--measures", asked.measures,
                  "us or metric: the measures in the examples (default: those of this house)")
      ->check(CLI::IsMember({"us", "metric"}).description(""));
}

void add_schema(CommandLine& to) {
  auto [command, asked] = to.add<SchemaRequest>(
      "schema", "the JSON Schema for a kind of file, for editors that check YAML with it", schema);
  command
      .add_option("KIND", asked.kind, "recipe, foods, household, on-hand, receipt, shop or plan")
      ->required();
}

} // namespace manciple::cli
