"""Makes the pictures beside this script with Pillow, a general imaging library: `pip install pillow`, then run it.

They hold what cameras write beside the pixels: a place (invented: 12 deg 34' 56" N, 65 deg 43' 21" W), a maker, a
comment, a colour profile, a small picture, and bytes after the end.
"""
import pathlib
import sys

from PIL import ExifTags, Image, ImageCms, PngImagePlugin

HERE = pathlib.Path(sys.argv[1] if len(sys.argv) > 1 else __file__).resolve()
HERE = HERE if HERE.is_dir() else HERE.parent

picture = Image.new("RGB", (64, 48))
picture.putdata([(4 * x, 5 * y, (x * y) % 256) for y in range(48) for x in range(64)])

exif = Image.Exif()
exif[ExifTags.Base.Orientation] = 6
exif[ExifTags.Base.Make] = "INVENTED MAKER"
exif[ExifTags.Base.DateTime] = "2001:02:03 04:05:06"
exif.get_ifd(ExifTags.IFD.GPSInfo).update({1: "N", 2: (12.0, 34.0, 56.0), 3: "W", 4: (65.0, 43.0, 21.0), 27: "SECRET PLACE"})
exif.get_ifd(ExifTags.IFD.Exif).update({0x9286: b"ASCII\0\0\0SECRET COMMENT"})
profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
beside = dict(exif=exif.tobytes(), icc_profile=profile, comment=b"SECRET COMMENT", quality=80)

for name, options in {"baseline": {}, "progressive": {"progressive": True}, "restarts": {"restart_marker_rows": 1}}.items():
    path = HERE / f"{name}.jpg"
    picture.save(path, **beside, **options)
    path.write_bytes(path.read_bytes() + b"\0\0\0\x18ftypmp42 SECRET FILM")
picture.convert("L").save(HERE / "grey.jpg", comment=b"SECRET COMMENT")
picture.convert("CMYK").save(HERE / "cmyk.jpg", comment=b"SECRET COMMENT")

info = PngImagePlugin.PngInfo()
info.add_text("Location", "SECRET PLACE")
info.add_itxt("Comment", "SECRET COMMENT", zip=False)
for name, made in {"colour": picture, "palette": picture.quantize(16), "deep": picture.convert("I;16")}.items():
    path = HERE / f"{name}.png"
    made.save(path, pnginfo=info, exif=exif.tobytes(), icc_profile=profile)
    path.write_bytes(path.read_bytes() + b"SECRET FILM")
see_through = picture.quantize(16)
see_through.save(HERE / "transparent.png", transparency=3)
