using System.Collections.Immutable;
using Logbook.Contracts;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>One output of a calculation that was run by hand.</summary>
/// <param name="UnitInWords">The unit with basis and temperature of a concentration.</param>
/// <param name="U">Standard uncertainty; null when no input's was given and the method has none.</param>
/// <param name="Covers">What the uncertainty covers.</param>
public sealed record HandOutput(string Id, double Value, string Unit, string UnitInWords, string Meaning, double? U, string? Covers);

/// <summary>What a calculation answered by hand.</summary>
public sealed record HandRun(string Id, IReadOnlyList<HandOutput> Outputs, IReadOnlyList<string> Notes, IReadOnlyList<string> Steps);

/// <summary>Runs one calculation by hand, without a site or a journal.</summary>
public static class CalculationRun
{
    /// <param name="typed"><c>role=VALUE[ UNIT]</c>; a value without a unit is in the role's.</param>
    /// <param name="uncertainties"><c>role=U</c>: standard uncertainty in the role's unit, or <c>2%</c> of the value.</param>
    /// <param name="constants">What stands for a role that is not typed; see <see cref="Constants"/>.</param>
    /// <returns>The outputs, or the mistakes: an unknown or missing role, a number or unit that cannot be read, a range, a refusal.</returns>
    public static Parsed<HandRun> ByHand(
        LoadedCalculation loaded, IReadOnlyList<string> typed, IReadOnlyList<string> uncertainties, IGuard guard, IReadOnlyDictionary<string, Quantity>? constants = null)
    {
        var mistakes = new List<Mistake>();
        var inputs = new HandInputs(loaded.Calculation.Info, constants ?? ImmutableDictionary<string, Quantity>.Empty, mistakes).Read(typed, uncertainties);
        var linked = new LinkedCalculation(Binding(loaded), loaded, inputs, HandInputs.Outputs(loaded.Calculation.Info, mistakes));
        if (mistakes.Count > 0)
        {
            return new Parsed<HandRun>(null, mistakes);
        }

        var run = GraphRun.Run(guard, [linked], inputs.ToDictionary(i => i.Key, i => i.Constant!, StringComparer.Ordinal));
        return run.Attempts[0] switch
        {
            { Values: { } values } => new Parsed<HandRun>(new HandRun(linked.Info.Id, Outputs(run, inputs), values.Notes, values.Steps), []),
            { Outside: { } outside } => Wrong($"{outside.Input.Info.Role} is {Words.Number(outside.Value)} {outside.Input.Unit}", "accepted: " + HandInputs.Range(outside.Input.Info)),
            { Outcome: Refused refused } => Wrong(refused.Sentence, ""),
            { Outcome: Failed failed } => Wrong($"plug-in {loaded.PlugIn} failed: {failed.Sentence}", ""),
            var attempt => throw new InvalidOperationException($"{linked.Info.Id} gave {attempt.Outcome}"),
        };
    }

    /// <summary>What a binding of the site gives as constants, the altitude among them: role to value in the role's unit. Empty when it cannot be linked.</summary>
    public static IReadOnlyDictionary<string, Quantity> Constants(LoadedCalculation loaded, Site site, CalculationBinding binding) =>
        (new CalculationLink(site, [loaded], binding, []).Link()?.Inputs ?? [])
            .Where(i => i.Constant is not null && (binding.Inputs.ContainsKey(i.Info.Role) || i.Info.Role.Equals("altitude", StringComparison.Ordinal)))
            .ToDictionary(i => i.Info.Role, i => i.Constant!, StringComparer.Ordinal);

    private static IReadOnlyList<HandOutput> Outputs(GraphRun run, IReadOnlyList<LinkedInput> inputs) =>
        [.. run.Results().Select(r => new HandOutput(r.Output.Info.Id, r.Result.Value, r.Result.Unit, r.Output.Unit.InWords(LitreAt(r.Output.Info, inputs)), r.Output.Info.Meaning, r.Result.U, r.Result.Covers))];

    private static string? LitreAt(OutputInfo output, IReadOnlyList<LinkedInput> inputs) =>
        inputs.FirstOrDefault(i => i.Info.Role.Equals(output.LitreAt, StringComparison.Ordinal)) is { } role
            ? $"{Words.Number(role.Constant!.Value)} {role.Unit}"
            : output.LitreAt;

    private static Parsed<HandRun> Wrong(string wrong, string accepted) => new(null, [Mistake.Typed(wrong, accepted)]);

    private static CalculationBinding Binding(LoadedCalculation loaded) => new()
    {
        Name = loaded.Calculation.Info.Id, Use = loaded.Calculation.Info.Id, Inputs = new Dictionary<string, InputSource>(StringComparer.Ordinal),
    };
}
