namespace Logbook.Demo.Line;

/// <summary>The lime mud tank: solids in weak liquor, stirred.</summary>
internal sealed class MudTank
{
    private const double Capacity = 900;

    /// <summary>t/m3; calcite.</summary>
    private const double SolidDensity = 2.71;

    private double _water = 400;
    private double _solids = 158;

    public Liquor Liquor { get; private set; } = Liquor.Of(6, 0.25, 0.82);

    public double Level => 100 * Volume / Capacity;

    /// <summary>kg/m3.</summary>
    public double Density => 1000 * (_solids + LiquorMass) / Volume;

    /// <summary>Share of the mass that is dry solids, 0 to 1.</summary>
    public double SolidsShare => _solids / (_solids + LiquorMass);

    /// <summary>Dry, t.</summary>
    public double Solids => _solids;

    /// <summary>Of the liquor in it, m3.</summary>
    public double LiquorVolume => _water;

    private double Volume => _water + (_solids / SolidDensity);

    private double LiquorMass => _water * LiquorDensity.Of(Liquor, 75) / 1000;

    /// <summary>One step.</summary>
    /// <param name="solids">In, t/h dry.</param>
    /// <param name="soda">In, kmol/h of each.</param>
    /// <param name="water">In, m3/h.</param>
    /// <param name="toFilter">Out, m3/h of slurry.</param>
    /// <returns>What goes to the mud filter: t/h dry solids, m3/h liquor.</returns>
    public (double Solids, double Liquor) Step(double solids, Liquor soda, double water, double toFilter, double dtHours)
    {
        var share = toFilter / Volume;
        var leaves = (Solids: _solids * share, Liquor: _water * share);
        var before = Liquor * _water;
        _water += (water - leaves.Liquor) * dtHours;
        _solids += (solids - leaves.Solids) * dtHours;
        Liquor = (before + ((soda - (Liquor * leaves.Liquor)) * dtHours)) * (1 / _water);
        return leaves;
    }
}
