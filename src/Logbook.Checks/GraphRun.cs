using Logbook.Contracts;
using Logbook.Journal;

namespace Logbook.Checks;

/// <summary>One guarded pass over an entry's calculations: what each answered, and what it is uncertain by.</summary>
internal sealed record GraphRun(IReadOnlyList<Attempt> Attempts, IReadOnlyDictionary<(string Calculation, string Output), List<Contribution>> Contributions)
{
    private static readonly IReadOnlyDictionary<string, double> Nothing = new Dictionary<string, double>(StringComparer.Ordinal);
    private static readonly GraphRun None = new([], new Dictionary<(string, string), List<Contribution>>());

    /// <summary>The pass may be run again without a culprit, so it keeps nothing outside itself.</summary>
    public static GraphRun Run(IGuard guard, IReadOnlyList<LinkedCalculation> calculations, IReadOnlyDictionary<string, Quantity> known) =>
        calculations.Count == 0 ? None : guard.Run(call =>
        {
            var pass = new GraphPass(calculations, call);
            var board = new Board(known);
            var attempts = pass.RunAll(board);
            var kragten = new Kragten(pass, attempts, board);
            kragten.Run(known);
            return new GraphRun(attempts, kragten.Contributions);
        });

    /// <summary>Every output that could be computed, in the order of the graph and then of the plug-in.</summary>
    public IEnumerable<(Attempt Attempt, LinkedOutput Output, Result Result)> Results() =>
        from attempt in Attempts
        let numbers = attempt.Values?.Numbers ?? Nothing
        from output in attempt.Calculation.Outputs
        where numbers.ContainsKey(output.Info.Id) && attempt.Calculation.Keeps(output)
        select (attempt, output, Result(attempt.Calculation, output, numbers[output.Info.Id]));

    private Result Result(LinkedCalculation calculation, LinkedOutput output, double number)
    {
        var parts = Contributions.GetValueOrDefault((calculation.Name, output.Info.Id)) ?? [];
        var u = Math.Sqrt(parts.Sum(p => p.Moved * p.Moved));
        var isKnown = double.IsFinite(u) && u > 0;
        return new Result(
            calculation.Name, output.Info.Id, output.Point?.Tag, output.InKeptUnit(number), output.KeptUnit.Name,
            isKnown ? u : null,
            isKnown ? CoverWords.Covers(parts) : null,
            calculation.Loaded.PlugIn);
    }
}
