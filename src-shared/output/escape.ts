/** Text inside markup. */

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** What XML 1.0 cannot hold at all: most controls, halves of surrogate pairs, two noncharacters. */

const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Cs}/gu;

/** Text for an element or a quoted attribute; what XML cannot hold becomes U+FFFD. */
export function escapeXml(text: string): string {
  return text.replace(FORBIDDEN, '\ufffd').replace(/[&<>"']/g, (character) => ENTITIES[character] ?? character);
}
