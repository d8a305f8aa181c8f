using System.Text;

namespace SecondShore.Demo.Ketterfold;

/// <summary>A box of tackle without makers' names.</summary>
internal static class KetterfoldTackle
{
    public static byte[] Json() => Encoding.UTF8.GetBytes("""
        {
          "notes": "Invented: no maker is meant.",
          "jigs": [
            { "name": "drag 1/2", "weight_oz": 0.5, "material": "tungsten", "head": "broad",
              "skirt": "silicone", "colour": "green and brown", "count": 6 },
            { "name": "drag 3/4", "weight_oz": 0.75, "material": "tungsten", "head": "broad",
              "skirt": "silicone", "colour": "green and brown", "count": 6 },
            { "name": "drag 1", "weight_oz": 1.0, "material": "tungsten", "head": "broad",
              "skirt": "silicone", "colour": "brown and orange", "count": 4 },
            { "name": "wood 1/2", "weight_oz": 0.5, "material": "lead", "head": "slim",
              "skirt": "silicone", "colour": "black and blue", "count": 4 },
            { "name": "wood 3/4", "weight_oz": 0.75, "material": "lead", "head": "slim",
              "skirt": "silicone", "colour": "green and brown", "count": 3 },
            { "name": "swim 3/8", "weight_oz": 0.375, "material": "lead", "head": "pointed",
              "skirt": "silicone", "colour": "white", "count": 5 }
          ],
          "trailers": [
            { "name": "slim craw", "kind": "slim", "length_in": 3.0, "weight_g": 4.5, "colour": "green", "count": 20 },
            { "name": "bulky craw", "kind": "bulky", "length_in": 3.75, "weight_g": 8, "colour": "brown and orange", "count": 15 },
            { "name": "paddle tail", "kind": "swimming", "length_in": 3.8, "weight_g": 7, "colour": "pearl", "count": 15 }
          ],
          "lines": [
            { "name": "fluoro 15", "kind": "fluorocarbon", "diameter_mm": 0.37, "strength_lb": 15, "length_m": 110 },
            { "name": "fluoro 12", "kind": "fluorocarbon", "diameter_mm": 0.33, "strength_lb": 12, "length_m": 120 },
            { "name": "braid 30", "kind": "braid", "diameter_mm": 0.28, "strength_lb": 30, "length_m": 140 }
          ],
          "rods": [
            { "name": "long heavy", "length_ft": 7.33, "power": "heavy, fast", "line": "fluoro 15", "tip_height_m": 1.0 },
            { "name": "medium heavy", "length_ft": 7.0, "power": "medium heavy, fast", "line": "fluoro 12", "tip_height_m": 1.0 }
          ]
        }

        """);
}
