#include "kitchen/kitchen.hpp"

#include "kitchen/errors.hpp"
#include "text/errors.hpp"
#include "text/nearest.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <map>

namespace manciple::kitchen {
namespace {

namespace fs = std::filesystem;

// The names of the YAML files of a directory, without their ending, sorted.
std::vector<std::string> names_in(const std::string& directory) {
  std::vector<std::string> out;
  std::error_code error;
  for (const fs::directory_entry& entry : fs::directory_iterator(directory, error)) {
    if (entry.path().extension() == ".yaml" && entry.is_regular_file(error)) {
      out.push_back(entry.path().stem().string());
    }
  }
  std::sort(out.begin(), out.end());
  return out;
}

std::string in_root(const std::string& root, const std::string& path) {
  return root == "." || root.empty() ? path : (fs::path(root) / path).string();
}

// Foods by name.
class FoodNames : public Names {
public:
  explicit FoodNames(foods::Book& book) : book_(book) {}

  std::optional<Target> find(std::string_view name) override {
    const auto id = book_.find(name);
    return id ? std::optional<Target>(*id) : std::nullopt;
  }
  [[nodiscard]] const foods::Food* food(const Target& target) const override {
    const auto* id = std::get_if<foods::FoodId>(&target);
    return id != nullptr ? &book_.get(*id) : nullptr;
  }
  [[nodiscard]] std::vector<std::string_view> all() const override { return book_.names(); }

private:
  foods::Book& book_;
};

// Recipes of the library by name, then foods. A recipe that is named gets an id and is read later.
class Library : public FoodNames {
public:
  Library(foods::Book& book, std::vector<std::string> slugs)
      : FoodNames(book), slugs_(std::move(slugs)) {}

  std::optional<Target> find(std::string_view name) override {
    const std::string slug = text::slug(name);
    for (const std::string& form : {slug, text::slug(text::singular(text::lower(name)))}) {
      if (std::binary_search(slugs_.begin(), slugs_.end(), form)) {
        return need(form);
      }
    }
    return FoodNames::find(name);
  }

  [[nodiscard]] std::vector<std::string_view> all() const override {
    std::vector<std::string_view> out = FoodNames::all();
    out.insert(out.end(), slugs_.begin(), slugs_.end());
    return out;
  }

  RecipeId need(const std::string& slug) {
    const auto [place, fresh] =
        ids_.emplace(slug, RecipeId{static_cast<std::uint32_t>(wanted.size())});
    if (fresh) {
      wanted.push_back(slug);
    }
    return place->second;
  }

  std::vector<std::string> wanted; ///< slugs in the order of their ids

private:
  std::vector<std::string> slugs_;
  std::map<std::string, RecipeId, std::less<>> ids_;
};

class Loader {
public:
  Loader(std::string root, text::Sources& sources, text::Diagnostics& diagnostics)
      : root_(std::move(root)),
        sources_(sources),
        diagnostics_(diagnostics),
        food_names_(kitchen.foods),
        library_(kitchen.foods, recipe_names()) {}

  Kitchen kitchen;

  void setting();
  void shops_named();
  void plan(const std::string& path);
  void recipes();
  void all_recipes();

private:
  std::optional<text::Node> read(const std::string& path);
  [[nodiscard]] std::vector<std::string> recipe_names() const {
    std::vector<std::string> names = names_in(in_root(root_, "recipes"));
    std::erase(names, "foods");
    return names;
  }

  std::string root_;
  text::Sources& sources_;
  text::Diagnostics& diagnostics_;
  FoodNames food_names_;
  Library library_;
};

std::optional<text::Node> Loader::read(const std::string& path) {
  const auto file = text::load(path, path, sources_, diagnostics_);
  return file ? text::parse_yaml(*file, sources_, diagnostics_) : std::nullopt;
}

// The household, its foods, its shops and its cupboards.
void Loader::setting() {
  const std::string own_foods = in_root(root_, "recipes/foods.yaml");
  if (fs::exists(own_foods)) {
    if (const auto node = read(own_foods)) {
      kitchen.foods.add_household(*node, diagnostics_);
    }
  }
  if (const auto node = read(in_root(root_, "plans/household.yaml"))) {
    kitchen.household = read_household(*node, food_names_, diagnostics_);
  }
  for (const std::string& name : names_in(in_root(root_, "plans/stores"))) {
    const ShopId id{static_cast<std::uint32_t>(kitchen.shops.size())};
    if (const auto node = read(in_root(root_, "plans/stores/" + name + ".yaml"))) {
      kitchen.shops.push_back(
          read_shop(*node, name, id, kitchen.household.system, food_names_, diagnostics_));
    }
  }
  shops_named();
  const std::string on_hand = in_root(root_, "plans/on-hand.yaml");
  if (fs::exists(on_hand)) {
    if (const auto node = read(on_hand)) {
      kitchen.on_hand = read_on_hand(*node, kitchen.household.system, food_names_, diagnostics_);
    }
  }
}

// The shops that the household's file names must have price lists.
void Loader::shops_named() {
  const auto shop = [&](const ShopName& name) -> Shop* {
    const auto found = std::find_if(kitchen.shops.begin(), kitchen.shops.end(),
                                    [&](const Shop& s) { return s.slug == name.slug; });
    if (found != kitchen.shops.end()) {
      return &*found;
    }
    std::vector<std::string_view> known;
    for (const Shop& s : kitchen.shops) {
      known.push_back(s.slug);
    }
    diagnostics_.error(errors::unknown_shop, name.at,
                       fmt::format("there is no price list plans/stores/{}.yaml", name.slug),
                       text::did_you_mean(name.slug, known));
    return nullptr;
  };
  for (const ShopName& name : kitchen.household.member_of) {
    if (Shop* found = shop(name)) {
      found->take_member_prices();
    }
  }
  for (const BuyingRule& rule : kitchen.household.buying) {
    for (const auto* list : {&rule.only_at, &rule.never_at, &rule.prefer}) {
      std::for_each(list->begin(), list->end(), shop);
    }
  }
}

void Loader::plan(const std::string& path) {
  if (const auto node = read(path)) {
    const PlanContext context{kitchen.household, kitchen.shops, library_, food_names_};
    kitchen.plan = read_plan(*node, context, diagnostics_);
  }
}

// Reading a recipe may name further ones; each is read once.
void Loader::recipes() {
  while (kitchen.recipes.size() < library_.wanted.size()) {
    const std::string slug = library_.wanted[kitchen.recipes.size()];
    Recipe recipe;
    if (const auto node = read(in_root(root_, "recipes/" + slug + ".yaml"))) {
      recipe = read_recipe(*node, slug, kitchen.household.system, library_, diagnostics_);
    }
    recipe.id = RecipeId{static_cast<std::uint32_t>(kitchen.recipes.size())};
    for (const MethodStep& step : recipe.method) {
      const auto& have = kitchen.household.appliances;
      const auto known = std::find_if(have.begin(), have.end(),
                                      [&](const Appliance& a) { return a.name == step.appliance; });
      if (!step.appliance.empty() && known == have.end()) {
        std::vector<std::string_view> names;
        for (const Appliance& a : have) {
          names.push_back(a.name);
        }
        const std::string near = text::did_you_mean(step.appliance, names);
        diagnostics_.error(errors::unknown_appliance, step.at,
                           fmt::format("this step needs a '{}', which the household does not have",
                                       step.appliance),
                           near.empty() ? fmt::format("add it to plans/household.yaml: "
                                                      "'appliances: {{{}: 1}}'",
                                                      step.appliance)
                                        : near);
      }
    }
    kitchen.recipes.push_back(std::move(recipe));
  }
}

void Loader::all_recipes() {
  for (const std::string& name : recipe_names()) {
    library_.need(name);
  }
  recipes();
}

} // namespace

bool is_plan(const std::string& path) {
  const fs::path file(path);
  const fs::path folder = file.parent_path().filename();
  return folder != "stores" && folder != "recipes" && file.stem() != "household" &&
         file.stem() != "on-hand";
}

std::string root_of(const std::string& path) {
  fs::path folder = fs::path(path).parent_path();
  if (folder.filename() == "stores") {
    folder = folder.parent_path();
  }
  if (folder.empty()) {
    return "..";
  }
  const fs::path root = folder.parent_path();
  return root.empty() ? (folder == "." ? ".." : ".") : root.string();
}

std::vector<std::string> plan_files(const std::string& root) {
  std::vector<std::string> out;
  for (const std::string& name : names_in(in_root(root, "plans"))) {
    const std::string path = in_root(root, "plans/" + name + ".yaml");
    if (is_plan(path)) {
      out.push_back(path);
    }
  }
  return out;
}

Kitchen read_kitchen(const std::string& plan_path, text::Sources& sources,
                     text::Diagnostics& diagnostics) {
  Loader loader(root_of(plan_path), sources, diagnostics);
  // A plan that cannot be read at all makes the rest beside the point.
  if (!fs::is_regular_file(plan_path)) {
    (void)text::load(plan_path, plan_path, sources, diagnostics);
    return std::move(loader.kitchen);
  }
  loader.setting();
  loader.plan(plan_path);
  loader.recipes();
  return std::move(loader.kitchen);
}

Kitchen read_everything(const std::string& root, text::Sources& sources,
                        text::Diagnostics& diagnostics) {
  Loader loader(root, sources, diagnostics);
  loader.setting();
  for (const std::string& path : plan_files(root)) {
    loader.plan(path);
  }
  loader.all_recipes();
  return std::move(loader.kitchen);
}

} // namespace manciple::kitchen
