import { useEffect, useState } from 'react';
import { fileOf, type KeptFile } from '../store/kept-file.ts';

/** A small picture of a pattern. It says nothing that its name beside it does not, so screen readers pass it over. */
export function CoverPicture({ picture }: { picture: KeptFile | undefined }) {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    if (!picture) return;
    const url = URL.createObjectURL(fileOf(picture));
    setAddress(url);
    return () => URL.revokeObjectURL(url);
  }, [picture]);
  return <span className="cover">{address && <img src={address} alt="" width={240} height={180} />}</span>;
}
