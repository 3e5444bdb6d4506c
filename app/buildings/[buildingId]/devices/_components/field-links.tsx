import Link from "next/link";

/** Ways from the register into the field, and in and out of it. */
export function FieldLinks({ buildingPath }: { buildingPath: string }) {
  return (
    <p>
      <Link href={`${buildingPath}/walk`}>Walk-through</Link>, desk after desk with a phone.{" "}
      <Link href={`${buildingPath}/labels`}>Labels</Link> to print.{" "}
      <Link href={`${buildingPath}/devices/bring-in`}>Bring in a spreadsheet, or take the register away.</Link>
    </p>
  );
}
