import { Button } from "@/app/_components/ui/button";
import { signOutAction } from "./actions";

/** The sign-out button of a signed-in page. A form, since signing out changes something. */
export function SignOutForm() {
  return (
    <form action={signOutAction}>
      <Button type="submit">Sign out</Button>
    </form>
  );
}
