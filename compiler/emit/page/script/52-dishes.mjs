// Each dish as it is cooked, read once one of them is looked at.
const kitchen = (() => {
  let kept;
  return () => (kept ??= JSON.parse($('#dishes-data').textContent));
})();
