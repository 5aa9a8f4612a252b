#pragma once

#include "text/keys.hpp"

/// The keys of a house's files. A reader checks by them and takes nothing that is not in them;
/// `manciple keys` and `manciple schema` tell them.
namespace manciple::kitchen::keys {

extern const text::Keys recipe;
extern const text::Keys step;
extern const text::Keys keeps;
extern const text::Keys by_product;

extern const text::Keys household;
extern const text::Keys meal_hours;
extern const text::Keys person;
extern const text::Keys appliance;
extern const text::Keys storage;
extern const text::Keys buying;
extern const text::Keys cooks;

extern const text::Keys on_hand;

extern const text::Keys receipt;
extern const text::Keys bought;

extern const text::Keys shop;
extern const text::Keys offer;
extern const text::Keys sale;
extern const text::Keys reduction;

extern const text::Keys plan;
extern const text::Keys dish;
extern const text::Keys absence;
extern const text::Keys guest;
extern const text::Keys extra;
extern const text::Keys trip;
extern const text::Keys stop;
extern const text::Keys session;
extern const text::Keys cooks_of_plan;

/// A kind of file: what it is called on the command line, where it stands, and what it holds.
struct Kind {
  std::string_view name;
  std::string_view path;
  const text::Value* value;
};
extern const std::span<const Kind> kinds;

} // namespace manciple::kitchen::keys
