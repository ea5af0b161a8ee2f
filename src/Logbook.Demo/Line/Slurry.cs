using System.Runtime.InteropServices;

namespace Logbook.Demo.Line;

/// <summary>Liquor with lime and mud in it, all per cubic metre of the green liquor that it was made from, so that volume change does not matter.</summary>
/// <param name="Liquor">Dissolved, kmol/m3 green liquor.</param>
/// <param name="Lime">Slaked and not yet reacted, kmol Ca/m3.</param>
/// <param name="Mud">CaCO3 formed, kmol Ca/m3.</param>
/// <param name="Inert">Inert of the lime that was not taken out as grits, kg/m3.</param>
/// <param name="Mass">Everything together, kg/m3.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Slurry(Liquor Liquor, double Lime, double Mud, double Inert, double Mass)
{
    public static Slurry operator *(Slurry a, double f) => new(a.Liquor * f, a.Lime * f, a.Mud * f, a.Inert * f, a.Mass * f);

    public static Slurry operator +(Slurry a, Slurry b) =>
        new(a.Liquor + b.Liquor, a.Lime + b.Lime, a.Mud + b.Mud, a.Inert + b.Inert, a.Mass + b.Mass);

    public static Slurry operator -(Slurry a, Slurry b) => a + (b * -1);

    /// <summary>Dry solids, kg/m3: free lime counts as hydroxide.</summary>
    public double Solids => (Lime * Molar.CaOH2) + (Mud * Molar.CaCO3) + Inert;

    /// <summary>Lime that reacts at once until lime or carbonate is used up: the part that equilibrium leaves to react, kmol/m3.</summary>
    /// <param name="constant">[OH]^2/[CO3] at equilibrium, kmol/m3.</param>
    public double ToReact(double constant)
    {
        var hydroxide = Liquor.NaOH + Liquor.Na2S;
        var b = (4 * hydroxide) + constant;
        var extent = (Math.Sqrt((b * b) - (16 * ((hydroxide * hydroxide) - (constant * Liquor.Na2CO3)))) - b) / 8;
        return Math.Min(Lime, extent);
    }

    /// <summary>After <paramref name="extent"/> kmol/m3 of Ca(OH)2 + Na2CO3 -> 2 NaOH + CaCO3.</summary>
    public Slurry React(double extent) => this with
    {
        Liquor = new Liquor(Liquor.NaOH + (2 * extent), Liquor.Na2S, Liquor.Na2CO3 - extent),
        Lime = Lime - extent,
        Mud = Mud + extent,
    };

    /// <summary>The clear liquor as it is in its own hot volume, and that volume per cubic metre of green liquor.</summary>
    public (Liquor Liquor, double Volume) Clear(double t)
    {
        var mass = Mass - Solids;
        var volume = mass / 1107;
        for (var i = 0; i < 4; i++)
        {
            volume = mass / LiquorDensity.Of(Liquor * (1 / volume), t);
        }

        return (Liquor * (1 / volume), volume);
    }
}
