/** What is folded away is made when it is first opened, which most of it never is, and stays for what is being typed in it. */
export function madeOnceOpen(isOpen: () => boolean): { readonly isMade: boolean } {
  let wasOpen = $state(false);
  $effect(() => {
    if (isOpen()) wasOpen = true;
  });
  return {
    get isMade() {
      return wasOpen || isOpen();
    },
  };
}
