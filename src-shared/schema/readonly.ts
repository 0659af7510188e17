/** A value whose every part is read-only: what a schema gives is never changed in place. Texts, numbers and bytes stay as they are. */
export type ReadonlyDeep<T> = T extends string | number | boolean | null | undefined | Uint8Array
  ? T
  : { readonly [Key in keyof T]: ReadonlyDeep<T[Key]> };
