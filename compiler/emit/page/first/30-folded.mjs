// What is not looked at lies folded in the page: the text of a `noscript`, which costs a phone nothing.
// It becomes elements when somebody looks at it or prints it, and when a change has to be written there.

const whenUnfolded = []; // what is to be done with elements that are new: (element around them) => {}
const unfold = (around) => {
  const folds = all('noscript.folded', around);
  for (const fold of folds) {
    const parent = fold.parentElement;
    fold.outerHTML = fold.textContent;
    for (const act of whenUnfolded) act(parent);
  }
};
