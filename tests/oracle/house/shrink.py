"""Makes a house smaller as long as it stays interesting: parts are left out one by one."""
import copy


def parts(tree, path=()):
    """Paths to everything that can be left out, the big parts first."""
    out = []
    if isinstance(tree, dict):
        out = [path + (key,) for key in tree]
    elif isinstance(tree, list):
        out = [path + (i,) for i in range(len(tree))]
    return out + [deeper for one in out for deeper in parts(tree[one[-1]], one)]


def without(tree, path):
    tree = copy.deepcopy(tree)
    inner = tree
    for key in path[:-1]:
        inner = inner[key]
    del inner[path[-1]]
    return tree


def shrink(house, interesting, tries=600):
    """The smallest house found that is still interesting(house). Leaves out what it can, over and over."""
    again = True
    while again and tries > 0:
        again = False
        for path in parts(house):
            if tries == 0:
                break
            try:
                smaller = without(house, path)
            except (KeyError, IndexError, TypeError):
                continue  # a part of it has gone
            tries -= 1
            if interesting(smaller):
                house, again = smaller, True
    return house
