"""Ten months of ten houses, and what a checker that shares no code with the compiler says of each: the sums of the list
(check_result.py) and every minute of every day (check_clock.py). Some are written by hand, the rest are drawn from the
demo's recipes by numbers that are always the same.

Usage: months.py PROGRAM [NAME...]"""
import pathlib
import random
import shutil
import subprocess
import sys
import tempfile

here = pathlib.Path(__file__).resolve().parent
root = here.parent
program = pathlib.Path(sys.argv[1]).resolve()

BREAKFASTS = ["apple-cinnamon-oatmeal", "scrambled-eggs", "yogurt-parfaits", "overnight-oats", "pancakes", "banana-muffins", "french-toast", "breakfast-burritos"]
LUNCHES = ["hummus-wraps", "egg-salad-sandwiches", "tuna-wraps", "ham-sandwiches", "grilled-cheese", "tomato-soup", "pasta-salad", "bean-quesadillas", "turkey-sandwiches"]
DINNERS = ["chicken-tacos", "smoky-lentil-soup", "lemon-baked-salmon", "spaghetti-and-meatballs", "margherita-pizza", "beef-burgers", "roast-chicken", "black-bean-enchiladas",
           "pork-chops-with-apples", "chickpea-curry", "chicken-noodle-soup", "fish-tacos", "pot-roast", "beef-chili", "mushroom-risotto", "chicken-stir-fry", "sausage-pizza",
           "herb-pork-loin", "lemon-garlic-chicken", "burrito-bowls", "baked-ziti", "shrimp-fried-rice", "chicken-fajitas", "glazed-ham", "split-pea-soup", "sesame-tofu-noodles",
           "chicken-pot-pie", "minestrone"]
SIDES = ["steamed-rice", "garlic-green-beans", "green-salad", "oven-fries", "coleslaw", "cornbread", "mashed-potatoes", "roasted-root-vegetables", "roasted-asparagus", "scalloped-potatoes"]
CAKES = ["apple-crisp", "carrot-cake", "oatmeal-cookies"]
NO_MEAT = {"breakfast": [b for b in BREAKFASTS if b != "breakfast-burritos"],
           "lunch": ["hummus-wraps", "egg-salad-sandwiches", "grilled-cheese", "tomato-soup", "bean-quesadillas"],
           "dinner": ["smoky-lentil-soup", "margherita-pizza", "black-bean-enchiladas", "chickpea-curry", "mushroom-risotto", "sesame-tofu-noodles", "minestrone"]}
KEPT = {"smoky-lentil-soup", "chickpea-curry", "beef-chili", "baked-ziti", "pot-roast", "minestrone", "split-pea-soup", "chicken-noodle-soup", "glazed-ham"}


def menu(seed, days, slots=None, sides=(0, 2), cakes=0.1, leftovers=0.2):
    draw = random.Random(seed)
    slots = slots or {"breakfast": BREAKFASTS, "lunch": LUNCHES, "dinner": DINNERS}
    lines, kept = [], []
    for day in range(1, days + 1):
        meals = []
        for slot, all_of_it in slots.items():
            if slot == "lunch" and kept and draw.random() < leftovers:
                meals.append(f"lunch: leftovers of {kept.pop()}")
                continue
            dishes = [draw.choice(all_of_it)]
            if slot == "dinner":
                dishes += draw.sample(SIDES, draw.randint(*sides))
                dishes += [draw.choice(CAKES)] if draw.random() < cakes else []
                kept = [dishes[0]] if dishes[0] in KEPT else []
            meals.append(f"{slot}: [{', '.join(dishes)}]")
        lines.append(f"  2027-04-{day:02}: {{{', '.join(meals)}}}")
    return "meals:\n" + "\n".join(lines) + "\n"


def household(appliances, people="[{name: Ada}, {name: Ben}, {name: Cy}, {name: Dee}]", more=""):
    return f'people: {people}\nmeals: {{breakfast: "07:00", lunch: "12:15", dinner: "18:30"}}\nappliances: {{{appliances}}}\n{more}'


FULL = "burner: 4, oven: 2, slow cooker: 1, food processor: 1, blender: 1, sink: 1"
ONE_OVEN = "burner: 4, oven: 1, slow cooker: 1, food processor: 1, blender: 1, sink: 1"
ONE_HOB = "burner: 1, oven: 1, slow cooker: 1, food processor: 1, blender: 1, sink: 1"
SUNDAYS = 'prep: [{every: Sunday, from: "13:00", until: "17:30", cooks: 1}]\n'
TWO = 'prep: [{every: Sunday, from: "13:00", until: "18:00", cooks: 2}]\n'
OFTEN = 'prep: [{every: Sunday, from: "12:45", until: "18:00", cooks: 2}, {every: Wednesday, from: "16:00", until: "20:00", cooks: 1}]\n'

# By hand: a kitchen of one small oven and a baker's week.
BAKER = {
    "sourdough": 'name: Country bread\nserves: 8\nmakes: 2 loaves\ningredients: [900 g bread flour, 600 ml water, 7 g active dry yeast, 18 g salt]\nmethod:\n'
                 '  - {do: Knead, hands on: 15 min}\n  - {do: Let rise until doubled, then: 1 h 30 min, wait: at most 20 min}\n'
                 '  - {do: Shape two loaves, hands on: 8 min, then: 40 min, wait: at most 10 min}\n  - {do: Bake, hands on: 2 min, then: 40 min, on: oven, at: 450 F}\nkeeps: {pantry: 4 days, freezer: 3 months}\nmake ahead: yes\n',
    "braise": 'name: Beer braise\nserves: 6\ningredients: [3 lb beef chuck roast, "2 onions, sliced", 2 cups beef broth]\nmarinate: 24 h\nmethod:\n'
              '  - {do: Rub the beef and cover it, hands on: 10 min}\n  - {do: Brown the beef, hands on: 12 min, on: burner}\n  - {do: Braise, hands on: 3 min, then: 2 h 30 min, on: oven, at: 325 F}\nkeeps: {fridge: 4 days, freezer: 2 months}\n',
    "beans": 'name: Baked beans\nserves: 6\ningredients: [1 lb dried black beans, "1 onion, diced", 2 tbsp molasses, 6 cups water]\nmethod:\n'
             '  - {do: "Boil the soaked beans, then simmer", hands on: 5 min, then: 1 h, on: burner}\n  - {do: Bake with the rest, hands on: 5 min, then: 1 h 30 min, on: oven, at: 300 F}\nkeeps: {fridge: 4 days, freezer: 3 months}\n',
    "kebabs": 'name: Chicken kebabs\nserves: 4\ningredients: ["1 1/2 lb boneless chicken thighs", "1 red bell pepper, sliced", 1/2 cup plain yogurt]\nmarinate: 4 h\nmethod:\n'
              '  - {do: Cut the chicken and coat it with the yogurt, hands on: 14 min}\n  - {do: "Roast, chicken to 165 F", hands on: 5 min, then: 18 min, on: oven, at: 425 F}\n',
    "bircher": 'name: Bircher muesli\nserves: 4\ningredients: [2 cups rolled oats, 2 cups whole milk, "2 apples, grated"]\nmarinate: 10 h\nmethod:\n  - {do: Mix and chill, hands on: 7 min}\n',
    "pie": 'name: Custard pie\nserves: 8\ningredients: [2 cups all-purpose flour, 1 cup sugar, 4 eggs, 2 cups whole milk, 1/2 cup butter]\nmethod:\n'
           '  - {do: Make the dough and line a tin, hands on: 15 min, then: 30 min}\n  - {do: Bake blind, hands on: 2 min, then: 15 min, on: oven, at: 400 F}\n'
           '  - {do: Fill and bake until it sets, hands on: 6 min, then: 40 min, on: oven, at: 325 F}\nkeeps: {fridge: 3 days}\nmake ahead: yes\n',
    "greens": 'name: Dressed greens\nserves: 4\ningredients: ["1 head romaine lettuce, torn", 2 tbsp olive oil, 1 tbsp red wine vinegar]\nmethod:\n  - {do: "Wash, tear and dress", hands on: 6 min}\n',
    "stock": 'name: Beef broth\nserves: 12\nmakes: 12 cups\ningredients: [5 lb beef shank, "3 onions, quartered", "4 carrots, sliced", 16 cups water]\nmethod:\n'
             '  - {do: Cut the vegetables, hands on: 8 min}\n  - {do: Simmer all, hands on: 10 min, then: 3 h, on: burner}\n  - {do: Strain, hands on: 8 min}\nkeeps: {fridge: 4 days, freezer: 3 months}\n',
    "soup": 'name: Onion soup\nserves: 4\ningredients: ["2 lb onions, sliced", 6 cups stock, 2 tbsp butter]\nmethod:\n'
            '  - {do: Slice the onions and soften them in the butter, hands on: 20 min, then: 10 min, on: burner}\n  - {do: Simmer, hands on: 2 min, then: 20 min, on: burner}\nkeeps: {fridge: 4 days}\n',
}
BAKER_WEEKS = "meals:\n" + "\n".join(
    f"  2027-04-{day:02}: {{breakfast: [bircher], dinner: [{', '.join(dishes)}]}}" for day, dishes in enumerate(
        [["braise", "greens", "sourdough"], ["soup", "sourdough"], ["kebabs", "greens"], ["beans", "pie"], ["kebabs", "beans"], ["soup", "greens"], ["braise", "pie", "greens"]] * 2, 1)) + "\n"

STOCKED = "date: 2027-03-31\non hand:\n" + "".join(f"  - {line}, freezer\n" for line in [
    "6 lb ground beef", "5 lb boneless chicken breasts", "9 lb boneless chicken thighs", "2 lb salmon fillet", "14 lb bone-in ham", "5 lb pork loin roast", "2 lb shrimp", "4 lb beef chuck roast",
    "1 whole chicken (5 lb)", "2 lb tilapia fillet", "24 slices whole wheat bread", "2 lb frozen peas"])

METRIC = {p.stem: p.read_text() for p in (root / "compiler/cli/house/metric/recipes").glob("*.yaml")}

MONTHS = {
    # name: (household, menu, prep, on hand, recipes of its own)
    "one oven": (household(ONE_OVEN), menu(1, 28), SUNDAYS, None, {}),
    "one hob": (household(ONE_HOB), menu(2, 21, sides=(0, 1)), SUNDAYS, None, {}),
    "two cooks": (household(FULL), menu(3, 30, sides=(1, 2), cakes=0.3), TWO, None, {}),
    "metric": (household(FULL, more="measures: metric\ncurrency: EUR\n"), menu(4, 21, {"breakfast": ["pancakes", "overnight-oats", "yogurt-parfaits"], "lunch": ["lentil-soup", "tomato-pasta", "tomato-soup"],
               "dinner": DINNERS}), SUNDAYS, None, METRIC),
    "no meat": (household(FULL, people="[{name: Ada}, {name: Ben}]"), menu(5, 28, NO_MEAT), SUNDAYS, None, {}),
    "many sessions": (household(FULL), menu(6, 28, sides=(0, 1), leftovers=0.5), OFTEN, None, {}),
    "frozen stock": (household(ONE_OVEN), menu(7, 14), TWO, STOCKED, {}),
    "no sessions": (household(FULL), menu(8, 21), "", None, {}),
    "a baker": (household(ONE_OVEN), BAKER_WEEKS, 'prep: [{date: 2027-04-04, from: "10:00", until: "16:00"}, {date: 2027-04-10, from: "09:00", until: "15:00"}]\n', None, BAKER),
    "nine at table": (household(FULL, people="[{name: Ada, avoids: [mushroom]}, {name: Ben, avoids: [fish]}, {name: Cy}, {name: Dee}, {name: Eve}, {name: Flo}, {name: Gil}, {name: Hal}, {name: Ida}]"),
                      menu(9, 21, {"breakfast": BREAKFASTS, "lunch": [d for d in LUNCHES if d != "tuna-wraps"], "dinner": [d for d in DINNERS if d not in ("lemon-baked-salmon", "fish-tacos", "mushroom-risotto")]}),
                      TWO, None, {}),
}


def write(place, month):
    house, meals, prep, on_hand, recipes = month
    shutil.copytree(root / "recipes", place / "recipes")
    (place / "plans/stores").mkdir(parents=True)
    for shop in (root / "plans/stores").glob("*.yaml"):
        shutil.copy(shop, place / "plans/stores")
    for slug, text in recipes.items():
        (place / "recipes" / f"{slug}.yaml").write_text(text)
    (place / "plans/household.yaml").write_text(house)
    if on_hand:
        (place / "plans/on-hand.yaml").write_text(on_hand)
    (place / "plans/april.yaml").write_text(
        "plan: April\nfrom: 2027-04-01\nuntil: 2027-04-30\n" + meals + prep +
        "trips:\n  - {date: 2027-03-31, stops: [stonebridge-wholesale, fairfield-market, greenrow-produce]}\n  - {every: Saturday, stops: [fairfield-market, greenrow-produce]}\n")


bad = 0
chosen = sys.argv[2:] or list(MONTHS)
for name in chosen:
    with tempfile.TemporaryDirectory() as folder:
        place = pathlib.Path(folder)
        write(place, MONTHS[name])
        built = subprocess.run([program, "build", place / "plans/april.yaml", "--out", place / "out", "--search", "0.2"], capture_output=True, text=True)
        if built.returncode != 0:
            print(f"{name}: does not build\n{built.stderr[-3000:]}")
            bad += 1
            continue
        for checker in (["check_result.py", place / "out", root / "compiler/emit/result.schema.json"], ["check_clock.py", place, place / "out"]):
            found = subprocess.run([sys.executable, here / "emit" / checker[0], *checker[1:]], capture_output=True, text=True)
            bad += found.returncode != 0
            print(f"{name}: {(found.stdout + found.stderr).strip()}")
print(f"{len(chosen)} months, {bad} wrong")
sys.exit(1 if bad else 0)
