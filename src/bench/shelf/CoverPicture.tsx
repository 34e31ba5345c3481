import { useEffect, useState } from 'react';

/** A small picture of a pattern. It says nothing that its name beside it does not, so screen readers pass it over. */
export function CoverPicture({ picture }: { picture: Blob | undefined }) {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    if (!picture) return;
    const url = URL.createObjectURL(picture);
    setAddress(url);
    return () => URL.revokeObjectURL(url);
  }, [picture]);
  return <span className="cover">{address && <img src={address} alt="" width={240} height={180} />}</span>;
}
