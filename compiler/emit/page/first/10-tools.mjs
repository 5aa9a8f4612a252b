// What both parts of the script stand on. Text goes into the page as text, never as markup.

const root = document.documentElement;
const $ = (selector, within = document) => within.querySelector(selector);
const all = (selector, within = document) => [...within.querySelectorAll(selector)];
const make = (tag, text = '', className = '', ...children) => {
  const element = document.createElement(tag);
  element.textContent = text;
  if (className) element.className = className;
  element.append(...children);
  return element;
};
