using System.Globalization;

namespace KitWorks.Drawings;

/// <summary>Whose eyes see a colour.</summary>
public enum Vision
{
    /// <summary>Without the cones for long waves: red looks dark.</summary>
    Protanopia,

    /// <summary>Without the cones for middle waves, the most common.</summary>
    Deuteranopia,

    /// <summary>Without the cones for short waves: blue and green look alike.</summary>
    Tritanopia,

    /// <summary>As a printer in black and white prints it.</summary>
    Grey,
}

/// <summary>
/// How a colour looks to people who see fewer of them. G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, "A physiologically-based
/// model for simulation of color vision deficiency", IEEE TVCG 15 (2009), their matrices of full severity, in linear RGB.
/// Grey is the luminance of IEC 61966-2-1.
/// </summary>
public static class ColourVision
{
    static readonly double[][] Machado =
    [
        [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
        [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881],
        [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900],
        [0.2126, 0.7152, 0.0722, 0.2126, 0.7152, 0.0722, 0.2126, 0.7152, 0.0722],
    ];

    /// <summary>The colour, <c>#RRGGBB</c>, as it is seen.</summary>
    /// <exception cref="FormatException">The text is not a colour.</exception>
    public static string Seen(string hex, Vision by)
    {
        var (r, g, b) = Linear(hex);
        var m = Machado[(int)by];
        return $"#{Byte(m[0] * r + m[1] * g + m[2] * b):X2}{Byte(m[3] * r + m[4] * g + m[5] * b):X2}{Byte(m[6] * r + m[7] * g + m[8] * b):X2}";
    }

    /// <summary>How different two colours look: their distance in CIELAB under D65 (CIE 15). About 2.3 can just be told apart side by side.</summary>
    public static double Difference(string one, string other)
    {
        var (a, b) = (Lab(one), Lab(other));
        return Math.Sqrt(Square(a.L - b.L) + Square(a.A - b.A) + Square(a.B - b.B));
    }

    static double Square(double x) => x * x;

    static (double L, double A, double B) Lab(string hex)
    {
        var (r, g, b) = Linear(hex);
        var x = F((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.95047);
        var y = F(0.2126 * r + 0.7152 * g + 0.0722 * b);
        var z = F((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.08883);
        return (116 * y - 16, 500 * (x - y), 200 * (y - z));
    }

    static double F(double t) => t > 216.0 / 24389 ? Math.Cbrt(t) : (24389.0 / 27 * t + 16) / 116;

    static (double, double, double) Linear(string hex)
    {
        ArgumentNullException.ThrowIfNull(hex);
        if (hex is not ['#', _, _, _, _, _, _]) throw new FormatException($"'{hex}' is not a colour; it is written #RRGGBB.");
        return (Part(1), Part(3), Part(5));

        double Part(int at)
        {
            var value = int.Parse(hex.AsSpan(at, 2), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture) / 255.0;
            return value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
        }
    }

    static int Byte(double linear)
    {
        var c = Math.Clamp(linear, 0, 1);
        return (int)Math.Round(255 * (c <= 0.0031308 ? 12.92 * c : 1.055 * Math.Pow(c, 1 / 2.4) - 0.055), MidpointRounding.AwayFromZero);
    }
}
