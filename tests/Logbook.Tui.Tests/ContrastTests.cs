using Logbook.Screens;
using Terminal.Gui.Drawing;
using Attribute = Terminal.Gui.Drawing.Attribute;

namespace Logbook.Tui.Tests;

/// <summary>
/// Every look that sets colours of its own is readable on every terminal: contrast by WCAG 2.1 (success criterion 1.4.3: 4.5
/// to 1 for text; relative luminance as defined there) in two palettes: xterm's sixteen colours and the ones of the Windows
/// console. What sets none has the terminal's own.
/// </summary>
public sealed class ContrastTests
{
    private static readonly Dictionary<ColorName16, (int R, int G, int B)> Xterm = new()
    {
        [ColorName16.Black] = (0, 0, 0), [ColorName16.Red] = (205, 0, 0), [ColorName16.White] = (255, 255, 255), [ColorName16.BrightYellow] = (255, 255, 0),
        [ColorName16.Gray] = (229, 229, 229),
    };

    private static readonly Dictionary<ColorName16, (int R, int G, int B)> Console = new()
    {
        [ColorName16.Black] = (12, 12, 12), [ColorName16.Red] = (197, 15, 31), [ColorName16.White] = (242, 242, 242), [ColorName16.BrightYellow] = (249, 241, 165),
        [ColorName16.Gray] = (204, 204, 204),
    };

    public static TheoryData<Look> All => new(Enum.GetValues<Look>());

    [Theory]
    [MemberData(nameof(All))]
    public void A_look_is_readable_in_every_palette(Look look)
    {
        var attribute = new Looks(colour: true).Of(look);
        if (attribute.Foreground == Color.None && attribute.Background == Color.None)
        {
            return;
        }

        var exact = Contrast(Exact(attribute.Foreground), Exact(attribute.Background));
        Assert.True(exact >= 4.5, $"{look}, in colours of 24 bits: {exact:F2}");
        foreach (var palette in new[] { Xterm, Console })
        {
            var contrast = Contrast(palette[Name(attribute.Foreground)], palette[Name(attribute.Background)]);
            Assert.True(contrast >= 4.5, $"{look}: {contrast:F2}");
        }
    }

    [Theory]
    [MemberData(nameof(All))]
    public void No_look_mixes_a_colour_of_its_own_with_one_of_the_terminals(Look look)
    {
        var attribute = new Looks(colour: true).Of(look);

        Assert.Equal(attribute.Foreground == Color.None, attribute.Background == Color.None);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Without_colour_no_look_has_one(Look look)
    {
        var attribute = new Looks(colour: false).Of(look);

        Assert.Equal((Color.None, Color.None), (attribute.Foreground, attribute.Background));
    }

    [Fact]
    public void The_levels_are_told_apart_without_colour()
    {
        var looks = new Looks(colour: false);

        Assert.Equal(3, new[] { Look.Note, Look.Watch, Look.Urgent }.Select(looks.Of).Distinct().Count());
    }

    /// <summary>
    /// Black on yellow, white on red and red on black have these contrasts in xterm's palette; white on black has the most there
    /// is (21 to 1, WCAG 2.1). The first three were worked out by hand from the definition.
    /// </summary>
    [Theory]
    [InlineData(ColorName16.BrightYellow, ColorName16.Black, 19.56)]
    [InlineData(ColorName16.White, ColorName16.Red, 5.84)]
    [InlineData(ColorName16.Red, ColorName16.Black, 3.60)]
    [InlineData(ColorName16.White, ColorName16.Black, 21)]
    public void The_contrast_is_computed_as_defined(ColorName16 one, ColorName16 other, double contrast) => Assert.Equal(contrast, Contrast(Xterm[one], Xterm[other]), 2);

    private static (int R, int G, int B) Exact(Color colour) => (colour.R, colour.G, colour.B);

    private static ColorName16 Name(Color color) => color.GetClosestNamedColor16();

    private static double Contrast((int R, int G, int B) one, (int R, int G, int B) other)
    {
        var (light, dark) = (Math.Max(Luminance(one), Luminance(other)), Math.Min(Luminance(one), Luminance(other)));
        return (light + 0.05) / (dark + 0.05);
    }

    private static double Luminance((int R, int G, int B) colour) => (0.2126 * Linear(colour.R)) + (0.7152 * Linear(colour.G)) + (0.0722 * Linear(colour.B));

    private static double Linear(int channel) => channel / 255.0 is var c && c <= 0.03928 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);
}
