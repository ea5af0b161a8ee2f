using Logbook.Demo.Line;

namespace Logbook.Demo.Instruments;

/// <summary>What the burette would show for each sample: cumulative mL at the three end points, sample measured at laboratory temperature.</summary>
internal static class TitrationReadings
{
    /// <summary>Of the hydrochloric acid, mol/L.</summary>
    public const double Acid = 0.5;

    private const double Laboratory = 25;

    /// <summary>Prefix of the three tags to the liquor, the temperature at which it is counted, and the sample in mL.</summary>
    private static readonly IReadOnlyDictionary<string, (Func<Moment, Liquor> Liquor, double CountedAt, double Sample)> _samples =
        new Dictionary<string, (Func<Moment, Liquor>, double, double)>(StringComparer.Ordinal)
        {
            ["GL"] = (m => m.Green.Cooled.Liquor, 88, 5),
            ["SO"] = (m => m.Hot.Slaker.Clear(98).Liquor, 98, 5),
            ["C3"] = (m => m.Hot.Causticizers[^1].Clear(97).Liquor, 97, 5),
            ["WL"] = (m => m.Mud.White.Liquor, WhiteLiquorMoment.CountedAt, 5),
            ["WW"] = (m => m.Mud.Weak, 70, 25),
        };

    public static IReadOnlyDictionary<string, Func<Moment, double>> ByTag { get; } = _samples
        .SelectMany(s => "ABC".Select(end => (Tag: $"{s.Key}-{end}", Value: EndPoint(s.Value, end))))
        .ToDictionary(p => p.Tag, p => p.Value, StringComparer.Ordinal);

    private static Func<Moment, double> EndPoint((Func<Moment, Liquor> Liquor, double CountedAt, double Sample) sample, char end) => m =>
    {
        var liquor = sample.Liquor(m).At(sample.CountedAt, Laboratory);
        // A: hydroxide and half of the sulphide; B: the other half too; C: carbonate too, both protons. mol/L.
        var neutralised = end switch
        {
            'A' => liquor.NaOH + liquor.Na2S,
            'B' => liquor.NaOH + (2 * liquor.Na2S),
            _ => liquor.NaOH + (2 * liquor.Na2S) + (2 * liquor.Na2CO3),
        };
        return neutralised * sample.Sample / Acid;
    };
}
