namespace Logbook.Demo.Line;

/// <summary>
/// Density of liquors by Laliberté's mixing model (J. Chem. Eng. Data 54, 1725, 2009, doi 10.1021/je8008123), sulphide
/// entered as NaOH and NaHS. Mill liquor also carries dead-load salts, which make it a few kg/m3 heavier.
/// </summary>
internal static class LiquorDensity
{
    private sealed record Solute(double C0, double C1, double C2, double C3, double C4)
    {
        public double Apparent(double share, double t)
        {
            var warp = t + C4;
            return ((C0 * share) + C1) * Math.Exp(1e-6 * warp * warp) / (share + C2 + (C3 * t));
        }
    }

    private static readonly Solute _hydroxide = new(319.0205095, 528.5923585, -0.1021978966, 3.504207064e-4, 765.9704702);
    private static readonly Solute _carbonate = new(5.454865435e-7, 1.721549294e-7, -0.08258502073, 1.688229498e-3, 4705.398222);
    private static readonly Solute _hydrosulphide = new(2.422177457e-6, 2.008602919e-6, 0.3529629390, -2.066797399e-3, -4493.991189);

    /// <summary>kg/m3 of a liquor whose strength is counted at <paramref name="t"/>.</summary>
    public static double Of(Liquor liquor, double t)
    {
        var density = Water.Density(t) + (1.4 * liquor.Tta);
        while (true)
        {
            var before = density;
            density = FromShares(Shares(liquor, before), t);
            if (Math.Abs(density - before) < 1e-6)
            {
                return density;
            }
        }
    }

    /// <summary>kg/m3 at <paramref name="to"/> of the liquor whose strength is counted at <paramref name="from"/>.</summary>
    public static double OfSame(Liquor liquor, double from, double to) => FromShares(Shares(liquor, Of(liquor, from)), to);

    private static (double NaOH, double NaHS, double Na2CO3) Shares(Liquor l, double density) =>
        ((l.NaOH + l.Na2S) * Molar.NaOH / density, l.Na2S * Molar.NaHS / density, l.Na2CO3 * Molar.Na2CO3 / density);

    private static double FromShares((double NaOH, double NaHS, double Na2CO3) w, double t)
    {
        var dissolved = w.NaOH + w.NaHS + w.Na2CO3;
        return 1 / (((1 - dissolved) / Water.Density(t))
            + (w.NaOH / _hydroxide.Apparent(dissolved, t))
            + (w.NaHS / _hydrosulphide.Apparent(dissolved, t))
            + (w.Na2CO3 / _carbonate.Apparent(dissolved, t)));
    }
}
