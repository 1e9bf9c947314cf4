using System.Globalization;
using Evenstep.Service.Answering.Pictures;

namespace Evenstep.Service.Tests.Answering.Pictures;

/// <summary>Contrast as the Web Content Accessibility Guidelines 2.2 (W3C Recommendation, 2023) define it.</summary>
public sealed class ContrastTests
{
    /// <summary>Success criterion 1.4.3, for text.</summary>
    private const double Legible = 4.5;

    /// <summary>Success criterion 1.4.11, for signs.</summary>
    private const double Visible = 3;

    [Fact]
    public void Text_is_legible_by_day_and_by_night() =>
        Assert.All([Tint.Ink, Tint.Quiet, Tint.Fresh], tint => AssertContrast(Legible, tint, Tint.Paper));

    [Fact]
    public void Signs_are_visible_by_day_and_by_night()
    {
        Assert.All([Tint.Ink, Tint.Fresh, Tint.Line], tint => AssertContrast(Visible, tint, Tint.Paper));
        Assert.All([Tint.Ink, Tint.Fresh], tint => AssertContrast(Visible, tint, Tint.Served));
    }

    [Theory]
    [InlineData("#000000", "#ffffff", 21)]
    [InlineData("#ffffff", "#ffffff", 1)]
    [InlineData("#777777", "#ffffff", 4.48)]
    public void The_reckoning_agrees_with_known_values(string one, string other, double contrast) => Assert.Equal(contrast, Contrast(one, other), 0.01);

    private static void AssertContrast(double least, Tint tint, Tint ground)
    {
        Assert.InRange(Contrast(tint.Day, ground.Day), least, 21);
        Assert.InRange(Contrast(tint.Night, ground.Night), least, 21);
    }

    private static double Contrast(string one, string other)
    {
        var (a, b) = (Luminance(one), Luminance(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    private static double Luminance(string colour) => (0.2126 * Channel(colour, 1)) + (0.7152 * Channel(colour, 3)) + (0.0722 * Channel(colour, 5));

    private static double Channel(string colour, int at)
    {
        var value = int.Parse(colour.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
        return value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
    }
}
