using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.Laboratory;

/// <summary>
/// The three cumulative end points of one portion of liquor, in mL of acid, burette start and blank taken off.
/// A: hydroxide and half of the sulphide. B: the other half, set free by formaldehyde. C: the carbonate.
/// </summary>
internal sealed record EndPoints(double A, double B, double C)
{
    public double Hydroxide => (2 * A) - B;

    public double Sulphide => 2 * (B - A);

    public double Carbonate => C - B;

    /// <summary>Percent; never asked of end points that <see cref="Impossible"/> names.</summary>
    public double Causticity => 100 * Hydroxide / (Hydroxide + Carbonate);

    /// <summary>Why these end points cannot be those of one portion, or null.</summary>
    public Refused? Impossible() => this switch
    {
        { A: <= 0 } => Worksheet.Refuse("a", $"a comes to {A:0.###} mL: the first end point must lie above the burette's start and the blank"),
        var e when e.A > e.B => Worksheet.Refuse("b", $"b ({B:0.###} mL) is below a ({A:0.###} mL): the readings are cumulative, a <= b <= c"),
        var e when e.B > e.C => Worksheet.Refuse("c", $"c ({C:0.###} mL) is below b ({B:0.###} mL): the readings are cumulative, a <= b <= c"),
        { Hydroxide: < 0 } => Worksheet.Refuse("b", $"b ({B:0.###} mL) is more than twice a ({A:0.###} mL), which would leave less than no hydroxide: b is at most 2 a"),
        var e when e.Hydroxide + e.Carbonate <= 0 => Worksheet.Refuse("c", $"c ({C:0.###} mL) leaves neither hydroxide nor carbonate: c is above b, or b below 2 a"),
        _ => null,
    };
}
