namespace Logbook.Demo.Instruments;

/// <summary>Readings that no balance gives: each wanders slowly around its usual value (common practice, no source).</summary>
/// <param name="Mean">In the starter site's unit.</param>
/// <param name="Sd">Of the wandering, without the reading's own error.</param>
/// <param name="Hours">How long it remembers.</param>
internal sealed record SteadyReading(double Mean, double Sd, double Hours)
{
    public static IReadOnlyDictionary<string, SteadyReading> ByTag { get; } =
        new Dictionary<string, SteadyReading>(StringComparer.Ordinal)
        {
            ["RG-RED"] = new(93.5, 0.4, 48),
            ["GF-P"] = new(3.4, 0.1, 24),
            ["GF-FR"] = new(1500, 25, 24),
            ["GC-TW1"] = new(22, 1, 72),
            ["GC-TW2"] = new(44, 1, 48),
            ["GC-COND"] = new(120, 15, 48),
            ["DR-N"] = new(2800, 5, 48),
            ["DR-TQ"] = new(40, 2.5, 24),
            ["DR-W"] = new(1.2, 0.05, 48),
            ["DR-S"] = new(45, 1.2, 48),
            ["DR-NA"] = new(3.2, 0.3, 48),
            ["DR-CEN"] = new(260, 30, 48),
            ["SL-I"] = new(100, 2, 24),
            ["SL-FS"] = new(8, 0.2, 48),
            ["SL-TS"] = new(66, 1.5, 12),
            ["CL-I"] = new(11, 0.5, 12),
            ["CL-F"] = new(6, 0.2, 48),
            ["CL-UN"] = new(5.5, 0.7, 200),
            ["CA-L1"] = new(88, 0.8, 12),
            ["CA-L2"] = new(86, 0.8, 12),
            ["CA-L3"] = new(84, 0.8, 12),
            ["CA-I1"] = new(45, 1, 24),
            ["CA-I2"] = new(44, 1, 24),
            ["CA-I3"] = new(44, 1, 24),
            ["CA-SET"] = new(0.9, 0.06, 48),
            ["WF-DP"] = new(1.1, 0.08, 24),
            ["WF-CL"] = new(10, 1, 24),
            ["MT-TQ"] = new(26, 1.5, 24),
            ["MF-V"] = new(52, 1.5, 18),
            ["MF-N"] = new(2.4, 0.08, 24),
            ["MF-WT"] = new(67, 1, 24),
            ["MF-FS"] = new(220, 30, 48),
            ["WW-SS"] = new(65, 10, 24),
            ["LM-CO3"] = new(2.2, 0.12, 72),
            ["LM-R3"] = new(47, 1, 72),
            ["LM-T60"] = new(6, 0.5, 200),
            ["LM-PEB"] = new(4, 0.5, 200),
            ["LB-N"] = new(TitrationReadings.Acid, 0.00005, 100),
            ["ST-H2S1"] = new(0.2, 0.03, 12),
            ["ST-H2S2"] = new(0.2, 0.03, 12),
            ["ST-H2S3"] = new(0.2, 0.03, 12),
            ["ST-SC"] = new(1.6, 0.2, 24),
            ["ST-W"] = new(120, 3, 24),
        };
}
