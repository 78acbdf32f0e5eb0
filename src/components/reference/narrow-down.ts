/** Text as it is compared: lower case, no accents, every kind of space one blank, decimal sign a point. */
export const comparable = (text: string): string =>
  text.normalize('NFKD').replace(/\p{Mark}/gu, '').toLowerCase().replace(/\s+/g, ' ').replace(/(\d),(\d)/g, '$1.$2').trim();

/** Whether every word that was typed stands somewhere in the text. Nothing typed fits everything. */
export function fits(typed: string, text: string): boolean {
  const haystack = comparable(text);
  return comparable(typed).split(' ').every((word) => haystack.includes(word));
}

/**
 * Lets a search field narrow the page down as one types: items marked `data-find` whose text does not fit are hidden,
 * a section without any left with them. Announces how many are left. Without script the field itself stays hidden.
 */
export function narrowDown(options: { readonly field: HTMLInputElement; readonly count: HTMLElement; readonly sections: Iterable<HTMLElement> }): void {
  const { field, count } = options;
  const sections = [...options.sections].map((section) => ({
    section,
    heading: section.querySelector('h2')?.textContent ?? '',
    items: [...section.querySelectorAll<HTMLElement>('[data-find]')],
  }));
  const apply = (): void => {
    let left = 0;
    for (const { section, heading, items } of sections) {
      // A word of the heading brings its whole section.
      const whole = field.value.trim() !== '' && fits(field.value, heading);
      let shown = 0;
      for (const item of items) {
        item.hidden = !(whole || fits(field.value, item.textContent ?? ''));
        if (!item.hidden) shown += 1;
      }
      section.hidden = shown === 0;
      left += shown;
    }
    count.textContent =
      field.value.trim() === '' ? '' : left === 0 ? 'Nothing fits. Fewer words, or another one.' : `${left} ${left === 1 ? 'entry fits' : 'entries fit'}.`;
  };
  field.addEventListener('input', apply);
  apply();
}
