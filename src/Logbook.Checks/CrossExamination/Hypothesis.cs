namespace Logbook.Checks.CrossExamination;

/// <summary>One thing that may have happened, and what it moves for each unit of its size.</summary>
/// <param name="Parameter">What would be wrong.</param>
/// <param name="Effects">How far each parameter is moved.</param>
/// <param name="Prior">Its weight before any evidence.</param>
/// <param name="Reach">The size to be thought of, in the parameter's unit.</param>
/// <param name="WithMethod">The method that would look exactly the same: named together, for no reading here can tell them apart.</param>
internal sealed record Hypothesis(int Parameter, IReadOnlyList<(int Parameter, double By)> Effects, double Prior, double Reach, int? WithMethod)
{
    // Beside one reading. Chosen on simulated lines, no source.
    private const double MethodPrior = 0.45;
    private const double ReachInU = 8;

    /// <summary>A reading that changes much by itself may also be wrong by much.</summary>
    private const double ReachInUsual = 3;

    /// <summary>How far its evidence goes in sound history beside that of the others, for each onset; 1 where that is not known.</summary>
    public IReadOnlyList<double> Chance { get; init; } = [1, 1, 1];

    /// <summary>True when it is something else than the reading, and moves it.</summary>
    public bool Moves(int reading) => Parameter != reading && Effects.Any(e => e.Parameter == reading);

    /// <summary>Every reading, constant and method, and every method with the readings that it really moves.</summary>
    /// <param name="line">What there is.</param>
    /// <param name="usual">The usual surprise of each reading.</param>
    /// <param name="moves">For each method with moves, how far each of its readings goes per unit.</param>
    public static IReadOnlyList<Hypothesis> All(Line line, IReadOnlyList<double> usual, IReadOnlyDictionary<int, IReadOnlyList<(int Parameter, double By)>> moves)
    {
        var pairs = moves.Where(m => m.Value.Count == 1).ToLookup(m => m.Value[0].Parameter, m => (int?)m.Key);
        var all = new List<Hypothesis>();
        for (var p = 0; p < line.Parameters.Count; p++)
        {
            var parameter = line.Parameters[p];
            var prior = parameter.Role == Role.Reading ? 1 : MethodPrior;
            all.Add(new Hypothesis(p, [(p, 1)], pairs.Contains(p) ? prior + MethodPrior : prior, Wide(line, usual, p), pairs[p].FirstOrDefault()));
        }

        all.AddRange(moves.Where(m => m.Value.Count > 1).Select(m => new Hypothesis(m.Key, m.Value, MethodPrior, Wide(line, usual, m.Key), null)));
        return all;
    }

    private static double Wide(Line line, IReadOnlyList<double> usual, int parameter) =>
        double.Hypot(ReachInU * line.Parameters[parameter].U, parameter < line.Readings ? ReachInUsual * usual[parameter] : 0);
}
