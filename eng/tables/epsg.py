"""Makes src/Atlas/epsg.bin: projected coordinate systems by number, with their datum's shift and their area of use.

Source: the EPSG Geodetic Parameter Dataset (IOGP, www.epsg.org; free to use and pass on under its terms of use, which ask to name it
and to say what was changed), as packed in proj.db of the Debian package proj-data. Changed: left out are systems that are withdrawn,
methods that the projection library lacks, and everything but the columns below; of several datum shifts that for all of the area, then the one of best stated accuracy stays.

    apt-get install proj-data proj-bin && python3 eng/tables/epsg.py /usr/share/proj/proj.db src/Atlas/epsg.bin

Layout, deflated text, one system a line, parted by tabs: code, name, method, its parameters (name=value, parted by blanks, angles in degrees,
lengths in metres), metres per unit, semi-major axis, inverse flattening, prime meridian, datum, shift to WGS 84 (3 or 7 numbers, empty
where none is published; position vector, metres, arc seconds, parts per million) and its accuracy in metres, area of use (south west north east),
and the box of that area in the system's own numbers (least and greatest easting, least and greatest northing), by cs2cs of the Debian package proj-bin.
"""
import sqlite3
import subprocess
import sys
import zlib

METHODS = {
    "9807": "Transverse_Mercator", "9801": "Lambert_Conformal_Conic_1SP", "9802": "Lambert_Conformal_Conic_2SP", "9822": "Albers_Conic_Equal_Area",
    "9806": "Cassini_Soldner", "9809": "Oblique_Stereographic", "9812": "Hotine_Oblique_Mercator", "9815": "Hotine_Oblique_Mercator_Azimuth_Center",
    "9818": "Polyconic", "9804": "Mercator_1SP", "9805": "Mercator_2SP", "9819": "Krovak", "1041": "Krovak", "1024": "Popular_Visualisation_Pseudo_Mercator",
}
PARAMETERS = {
    "8801": "latitude_of_origin", "8802": "central_meridian", "8805": "scale_factor", "8806": "false_easting", "8807": "false_northing",
    "8821": "latitude_of_origin", "8822": "central_meridian", "8823": "standard_parallel_1", "8824": "standard_parallel_2",
    "8826": "false_easting", "8827": "false_northing", "8811": "latitude_of_center", "8812": "longitude_of_center", "8813": "azimuth",
    "8814": "rectified_grid_angle", "8815": "scale_factor", "8816": "false_easting", "8817": "false_northing", "8833": "longitude_of_center",
    "1036": "azimuth", "8818": "pseudo_standard_parallel_1", "8819": "scale_factor",
}


def main(source, target):
    db = sqlite3.connect(source)
    units = {(a, c): (kind, factor) for a, c, kind, factor in db.execute("select auth_name, code, type, conv_factor from unit_of_measure")}
    lines = [line for line in (system(db, units, *row) for row in db.execute(
        "select code, name, coordinate_system_code, geodetic_crs_code, conversion_code from projected_crs where auth_name='EPSG' and deprecated=0 "
        "and conversion_auth_name='EPSG' order by cast(code as integer)")) if line]
    text = "\n".join(lines).encode("utf-8")
    packer = zlib.compressobj(9, zlib.DEFLATED, -15)
    packed = packer.compress(text) + packer.flush()
    open(target, "wb").write(packed)
    print(len(lines), "systems", len(text), "bytes", len(packed), "packed")


def degrees(value, unit, factor):
    """Degrees of an angle; unit 9110 writes minutes and seconds as its decimals."""
    if str(unit) != "9110":
        return value * factor * 57.29577951308232
    size = round(abs(value) * 1e9)
    whole, minutes, seconds = size // 10**9, size // 10**7 % 100, size % 10**7 / 1e5
    return (whole + minutes / 60 + seconds / 3600) * (-1 if value < 0 else 1)


def number(value):
    return f"{value:.12g}"


def system(db, units, code, name, axes, base, conversion):
    row = db.execute("select * from conversion_table where auth_name='EPSG' and code=?", (conversion,)).fetchone()
    method = METHODS.get(str(row[5]))
    if method is None:
        return None
    parameters = []
    for k in range(7):
        _, parameter, value, unit_by, unit = row[6 + 5 * k:11 + 5 * k]
        if parameter is None:
            continue
        kind, factor = units[(unit_by, unit)]
        if str(parameter) not in PARAMETERS:
            return None
        if kind == "angle":
            value = degrees(value, unit, factor)
        elif kind in ("length", "scale"):
            value = value * factor
        parameters.append(f"{PARAMETERS[str(parameter)]}={number(value)}")
    axis = db.execute("select uom_auth_name, uom_code, orientation from axis where coordinate_system_auth_name='EPSG' and coordinate_system_code=? "
                      "order by coordinate_system_order", (axes,)).fetchall()
    if not axis or not {a[2] for a in axis} <= {"east", "north"} or len(axis) != 2:
        return None
    unit = units[(axis[0][0], axis[0][1])][1]
    datum = db.execute(
        "select d.code, d.name, e.semi_major_axis, e.inv_flattening, e.semi_minor_axis, m.longitude, m.uom_auth_name, m.uom_code, u.conv_factor from geodetic_crs g "
        "join geodetic_datum d on d.auth_name=g.datum_auth_name and d.code=g.datum_code "
        "join ellipsoid e on e.auth_name=d.ellipsoid_auth_name and e.code=d.ellipsoid_code "
        "join prime_meridian m on m.auth_name=d.prime_meridian_auth_name and m.code=d.prime_meridian_code "
        "join unit_of_measure u on u.auth_name=e.uom_auth_name and u.code=e.uom_code where g.auth_name='EPSG' and g.code=?", (base,)).fetchone()
    if datum is None:
        return None
    _, datum_name, axis_m, flattening, minor, meridian, by, meridian_unit, metre = datum
    if flattening is None:
        flattening = 0 if minor in (None, axis_m) else axis_m / (axis_m - minor)
    meridian = degrees(meridian, meridian_unit, units[(by, meridian_unit)][1])
    area = db.execute("select e.south_lat, e.west_lon, e.north_lat, e.east_lon from usage u join extent e on e.auth_name=u.extent_auth_name "
                      "and e.code=u.extent_code where u.object_table_name='projected_crs' and u.object_auth_name='EPSG' and u.object_code=?", (code,)).fetchone()
    if area is None or None in area:
        return None
    box = box_of(code, area, axis[0][2] == "north")
    if box is None:
        return None
    shift, accuracy = shift_of(db, units, base, area)
    return "\t".join([str(code), name, method, " ".join(parameters), number(unit), number(axis_m * metre), number(flattening), number(meridian),
                      datum_name, " ".join(map(number, shift)), number(accuracy) if shift else "", " ".join(number(round(v, 2)) for v in area),
                      " ".join(box)])


def box_of(code, area, north_first):
    """The box of an area of use in a system's own numbers, from a net of 5 x 5 places."""
    south, west, north, east = area
    if east < west:
        east += 360
    places = "\n".join(f"{south + (north - south) * i / 4} {west + (east - west) * k / 4}" for i in range(5) for k in range(5))
    told = subprocess.run(["cs2cs", "-f", "%.1f", "EPSG:4326", f"EPSG:{code}"], input=places, capture_output=True, text=True, check=False).stdout
    pairs = [line.split()[:2] for line in told.splitlines() if "*" not in line]
    if not pairs:
        return None
    first, second = [float(p[0]) for p in pairs], [float(p[1]) for p in pairs]
    x, y = (second, first) if north_first else (first, second)
    return [f"{v:.0f}" for v in (min(x), max(x), min(y), max(y))]


def greenwich_of(db, base):
    """The same datum counted from Greenwich: shifts are published for that one. Itself where there is none."""
    row = db.execute("select name from geodetic_crs where auth_name='EPSG' and code=?", (base,)).fetchone()
    if row is None or not row[0].endswith(")"):
        return base
    plain = db.execute("select code from geodetic_crs where auth_name='EPSG' and deprecated=0 and type='geographic 2D' and name=?", (row[0][:row[0].rindex("(")].strip(),)).fetchone()
    return plain[0] if plain and any(m in row[0] for m in ("(Ferro)", "(Oslo)", "(Paris)", "(Stockholm)", "(Rome)", "(Jakarta)", "(Bern)", "(Lisbon)", "(Athens)", "(Brussels)", "(Bogota)")) else base


def shift_of(db, units, base, area):
    """The best stated shift to WGS 84, else to ETRS89 (within a metre of it), whose area holds the system's middle; none needed for WGS 84 itself."""
    best = None
    for row in db.execute(
            "select t.method_code, t.accuracy, t.tx, t.ty, t.tz, t.rx, t.ry, t.rz, t.scale_difference, t.rotation_uom_code, t.scale_difference_uom_code, t.px, t.py, t.pz, "
            "t.target_crs_code, e.south_lat, e.west_lon, e.north_lat, e.east_lon from helmert_transformation_table t join usage u on u.object_table_name='helmert_transformation' "
            "and u.object_auth_name=t.auth_name and u.object_code=t.code join extent e on e.auth_name=u.extent_auth_name and e.code=u.extent_code "
            "where t.auth_name='EPSG' and t.deprecated=0 and t.source_crs_code=? and t.target_crs_code in ('4326', '4258') and t.method_code in ('9603','9606','9607','9636')",
            (greenwich_of(db, base),)):
        method, accuracy, tx, ty, tz, rx, ry, rz, ds, turn, scale, px, py, pz, target, south, west, north, east = row
        middle_lat, middle_lon = (area[0] + area[2]) / 2, (area[1] + area[3]) / 2
        if not (south <= middle_lat <= north and (west <= middle_lon <= east or west > east)):
            continue
        shift = [tx, ty, tz]
        if str(method) != "9603":
            if str(turn) not in ("9104", "9109") or str(scale) not in ("9202",):
                continue
            # 9109 are microradians; 9607 and 9636 turn the frame, 9606 the place.
            sign = (1 if str(method) == "9606" else -1) * (1 if str(turn) == "9104" else 0.2062648062470964)
            rx, ry, rz = sign * rx, sign * ry, sign * rz
            if str(method) == "9636":
                shift = about_origin(shift, (rx, ry, rz), ds, (px, py, pz))
            shift += [rx, ry, rz, ds]
        # One made for all of the area comes first, then the better, then the one to WGS 84 itself.
        part = not (south <= area[0] + 0.3 and north >= area[2] - 0.3 and (west > east or area[1] > area[3] or (west <= area[1] + 0.3 and east >= area[3] - 0.3)))
        accuracy = accuracy if accuracy is not None else 999
        key = (part, accuracy, str(target) != "4326")
        if best is None or key < best[0]:
            best = (key, shift, max(accuracy, 3) if part else accuracy)
    return (best[1], best[2]) if best else ([], 0)


def about_origin(shift, turn, ds, pivot):
    """A shift that turns about a place of its own, as one that turns about the earth's middle."""
    rx, ry, rz = (r / 206264.80624709636 for r in turn)
    px, py, pz = pivot
    size = 1 + ds * 1e-6
    turned = (size * (px - rz * py + ry * pz), size * (rz * px + py - rx * pz), size * (-ry * px + rx * py + pz))
    return [t + p - q for t, p, q in zip(shift, pivot, turned)]


main(*sys.argv[1:3])
