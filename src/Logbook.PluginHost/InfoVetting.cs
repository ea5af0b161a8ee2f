using Logbook.Contracts;

namespace Logbook.PluginHost;

/// <summary>What a calculation says about itself must hold together, or the program would stumble over it later.</summary>
internal static class InfoVetting
{
    /// <summary>The first thing that does not hold, or null.</summary>
    public static PluginTrouble? Trouble(IReadOnlyList<ICalculation> calculations)
    {
        if (calculations.Count == 0)
        {
            return PluginTrouble.Failed("empty", "it has no public class that implements ICalculation");
        }

        if (Repeated(calculations.Select(c => c.Info.Id)) is { } id)
        {
            return PluginTrouble.Refused("id-clash", $"two of its calculations are called {FolderVetting.Visible(id)}");
        }

        return calculations.Select(c => Sentence(c.Info)).FirstOrDefault(s => s is not null) is { } sentence
            ? PluginTrouble.Failed("info", sentence)
            : null;
    }

    private static string? Sentence(CalculationInfo info)
    {
        if (!IsWord(info.Id))
        {
            return $"'{FolderVetting.Visible(info.Id ?? "")}' is no calculation id: lower-case letters, digits and '-'";
        }

        if (info.Inputs is null || info.Outputs is not { Count: > 0 })
        {
            return $"{info.Id} has no list of inputs or no outputs";
        }

        return Names(info, "input", info.Inputs.Select(i => i.Role))
            ?? Names(info, "output", info.Outputs.Select(o => o.Id))
            ?? info.Inputs.Select(i => Range(info, i)).FirstOrDefault(s => s is not null)
            ?? UnknownRole(info);
    }

    private static string? Names(CalculationInfo info, string what, IEnumerable<string> names)
    {
        var all = names.ToList();
        if (all.Find(n => !IsWord(n)) is { } odd)
        {
            return $"{info.Id}: '{FolderVetting.Visible(odd)}' is no {what} name: lower-case letters, digits and '-'";
        }

        return Repeated(all) is { } twice ? $"{info.Id} has two {what}s called {twice}" : null;
    }

    private static string? Range(CalculationInfo info, InputInfo input)
    {
        if (!(input.Lowest <= input.Highest))
        {
            return $"{info.Id}: the range of {input.Role} is empty";
        }

        return input.Default is { } value && !(value >= input.Lowest && value <= input.Highest)
            ? $"{info.Id}: the default of {input.Role} lies outside its range"
            : null;
    }

    private static string? UnknownRole(CalculationInfo info)
    {
        var roles = info.Inputs.Select(i => i.Role).ToHashSet(StringComparer.Ordinal);
        var unknown = info.Outputs.SelectMany(o => o.Moves.Concat(o.NeedsFitted)).FirstOrDefault(r => !roles.Contains(r));
        return unknown is null ? null : $"{info.Id}: an output names the role {FolderVetting.Visible(unknown)}, which it does not take";
    }

    private static string? Repeated(IEnumerable<string> names) =>
        names.GroupBy(n => n, StringComparer.Ordinal).FirstOrDefault(g => g.Skip(1).Any())?.Key;

    private static bool IsWord(string? name) =>
        name is { Length: > 0 and <= 64 } && char.IsAsciiLetterLower(name[0])
        && name.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '-');
}
