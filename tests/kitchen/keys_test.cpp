// Every key of every kind of file: its example reads, and any other shape at it is an error there.
#include "kitchen/keys.hpp"

#include "cli/compile.hpp"
#include "kitchen/kitchen.hpp"

#include <gtest/gtest.h>

#include <functional>

namespace manciple::kitchen {
namespace {

using text::Key;
using text::Keys;
using text::Value;

// A house in memory that has what the examples speak of.
text::FilesInMemory house() {
  text::FilesInMemory files;
  files.texts["plans/household.yaml"] =
      "people: [{name: Ada}, {name: Ben}]\nmeals: {dinner: \"18:30\"}\n"
      "appliances: {burner: 4, oven: 1}\n";
  files.texts["plans/stores/corner.yaml"] = "shop: Corner\nprices: {onion: 1.00/lb}\n";
  files.texts["plans/on-hand.yaml"] = "date: 2027-02-28\non hand: []\n";
  files.texts["plans/2027-03.yaml"] =
      "plan: P\nfrom: 2027-03-01\nuntil: 2027-03-31\nmeals: {}\ntrips: []\n";
  files.texts["recipes/stew.yaml"] = "name: Stew\nserves: 2\ningredients: [1 lb onion]\n";
  files.texts["recipes/foods.yaml"] = "leek: {department: produce}\n";
  return files;
}

struct KeysRead {
  text::Sources sources;
  text::Diagnostics diagnostics;
  explicit KeysRead(const text::FilesInMemory& files) {
    (void)read_everything(".", sources, diagnostics, files);
  }
  [[nodiscard]] std::string said() const { return render(diagnostics, sources); }
};

// A mapping with what it needs, and `at` a key. Where there are `date` and `every`, one of them is
// needed.
std::string with(const Keys& keys, const Key* at, const std::string& value) {
  const bool dated = std::any_of(keys.keys.begin(), keys.keys.end(),
                                 [](const Key& k) { return k.name == "every"; });
  std::string out = dated && at->name != "every" && at->name != "date" ? "date: 2027-03-02" : "";
  for (const Key& key : keys.keys) {
    if (key.needed || &key == at) {
      out += (out.empty() ? "" : ", ") + std::string(key.name) + ": " +
             (&key == at ? value : std::string(key.value->example));
    }
  }
  return "{" + out + "}";
}

using Wrap = std::function<std::string(const std::string&)>;
using Try = std::function<void(const Wrap&, const Keys&, const Key&)>;

void each_key(const Value& value, const Wrap& wrap, const Try& check);

void each_key(const Keys& keys, const Wrap& wrap, const Try& check) {
  for (const Key& key : keys.keys) {
    check(wrap, keys, key);
    each_key(
        *key.value, [&](const std::string& inner) { return wrap(with(keys, &key, inner)); }, check);
  }
}

void each_key(const Value& value, const Wrap& wrap, const Try& check) {
  if (value.keys != nullptr) {
    each_key(*value.keys, wrap, check);
  }
  if (value.items != nullptr) {
    each_key(
        *value.items, [&](const std::string& inner) { return wrap("[" + inner + "]"); }, check);
  }
  if (value.each != nullptr) {
    // The name in the example.
    const std::string example(value.example);
    const std::string name = example.substr(1, example.find(": ") - 1);
    each_key(
        *value.each,
        [&](const std::string& inner) { return wrap("{" + name + ": " + inner + "}"); }, check);
  }
}

std::string file_of(std::string_view kind) {
  return kind == "recipe"      ? "recipes/stew.yaml"
         : kind == "foods"     ? "recipes/foods.yaml"
         : kind == "household" ? "plans/household.yaml"
         : kind == "on-hand"   ? "plans/on-hand.yaml"
         : kind == "receipt"   ? "plans/receipts/2027-03-02-corner.yaml"
         : kind == "shop"      ? "plans/stores/corner.yaml"
                               : "plans/2027-03.yaml";
}

void for_all(const std::function<void(const std::string& file, const Wrap&, const Keys&,
                                      const Key&)>& check) {
  for (const keys::Kind& kind : keys::kinds) {
    each_key(
        *kind.value, [](const std::string& inner) { return inner; },
        [&](const Wrap& wrap, const Keys& keys, const Key& key) {
          check(file_of(kind.name), wrap, keys, key);
        });
  }
}

TEST(Keys, EveryExampleIsReadWithoutAnError) {
  int count = 0;
  for_all([&](const std::string& file, const Wrap& wrap, const Keys& keys, const Key& key) {
    text::FilesInMemory files = house();
    for (const bool metric : {false, true}) {
      files.texts[file] =
          wrap(with(keys, &key, std::string(key.value->example_for(metric)))) + "\n";
      const KeysRead read(files);
      EXPECT_EQ(read.diagnostics.errors(), 0U) << files.texts[file] << read.said();
    }
    ++count;
  });
  EXPECT_GT(count, 100);
}

TEST(Keys, EveryOtherShapeIsAnErrorInThatFile) {
  for_all([&](const std::string& file, const Wrap& wrap, const Keys& keys, const Key& key) {
    for (const std::string wrong : {"[[x]]", "{zz: {zz: [zz]}}", "[{zz: zz}, [zz]]", "~"}) {
      const bool may_be_empty = key.value->items != nullptr || key.value->each != nullptr;
      if (wrong == "~" && may_be_empty) {
        continue;
      }
      text::FilesInMemory files = house();
      files.texts[file] = wrap(with(keys, &key, wrong)) + "\n";
      const KeysRead read(files);
      EXPECT_GE(read.diagnostics.errors(), 1U) << key.name << ": " << files.texts[file];
      EXPECT_NE(read.said().find(file + ":1:"), std::string::npos)
          << files.texts[file] << read.said();
    }
    if (!key.value->text && (key.value->items == nullptr || !key.value->items->text)) {
      text::FilesInMemory files = house();
      files.texts[file] = wrap(with(keys, &key, "8.25 %")) + "\n";
      const KeysRead read(files);
      EXPECT_GE(read.diagnostics.errors(), 1U) << key.name << ": " << files.texts[file];
    }
  });
}

TEST(Keys, EveryKeyOfTheDemoIsInATable) {
  text::Sources sources;
  text::Diagnostics diagnostics;
  (void)read_everything(MANCIPLE_SOURCE, sources, diagnostics);
  EXPECT_EQ(diagnostics.errors(), 0U) << render(diagnostics, sources);
}

} // namespace
} // namespace manciple::kitchen
