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

        var ids = new HashSet<string>(StringComparer.Ordinal);
        foreach (var calculation in calculations)
        {
            if (Sentence(calculation.Info) is { } sentence)
            {
                return PluginTrouble.Failed("info", sentence);
            }

            if (!ids.Add(calculation.Info.Id))
            {
                return PluginTrouble.Refused("id-clash", $"two of its calculations are called {calculation.Info.Id}");
            }
        }

        return null;
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

        var roles = new HashSet<string>(StringComparer.Ordinal);
        return Inputs(info, roles) ?? Outputs(info, roles);
    }

    private static string? Inputs(CalculationInfo info, HashSet<string> roles)
    {
        for (var i = 0; i < info.Inputs.Count; i++)
        {
            var input = info.Inputs[i];
            if (Name(info, "input", input.Role, roles) is { } sentence)
            {
                return sentence;
            }

            if (!(input.Lowest <= input.Highest))
            {
                return $"{info.Id}: the range of {input.Role} is empty";
            }

            if (input.Default is { } value && !(value >= input.Lowest && value <= input.Highest))
            {
                return $"{info.Id}: the default of {input.Role} lies outside its range";
            }
        }

        return Order(info, roles);
    }

    private static string? Order(CalculationInfo info, HashSet<string> roles)
    {
        for (var i = 0; i < info.Inputs.Count; i++)
        {
            if (info.Inputs[i].CountsOnFrom is { } from && (!roles.Contains(from) || from == info.Inputs[i].Role))
            {
                return $"{info.Id}: {info.Inputs[i].Role} counts on from {FolderVetting.Visible(from)}, which is no other role of it";
            }
        }

        return null;
    }

    private static string? Outputs(CalculationInfo info, HashSet<string> roles)
    {
        var ids = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < info.Outputs.Count; i++)
        {
            var output = info.Outputs[i];
            if ((Name(info, "output", output.Id, ids) ?? Roles(info, output.Moves, roles) ?? Roles(info, output.NeedsFitted, roles)) is { } sentence)
            {
                return sentence;
            }
        }

        return null;
    }

    private static string? Name(CalculationInfo info, string what, string name, HashSet<string> before)
    {
        if (!IsWord(name))
        {
            return $"{info.Id}: '{FolderVetting.Visible(name ?? "")}' is no {what} name: lower-case letters, digits and '-'";
        }

        return before.Add(name) ? null : $"{info.Id} has two {what}s called {name}";
    }

    private static string? Roles(CalculationInfo info, IReadOnlyList<string> named, HashSet<string> roles)
    {
        for (var i = 0; i < named.Count; i++)
        {
            if (!roles.Contains(named[i]))
            {
                return $"{info.Id}: an output names the role {FolderVetting.Visible(named[i])}, which it does not take";
            }
        }

        return null;
    }

    private static bool IsWord(string? name)
    {
        if (name is not { Length: > 0 and <= 64 } || !char.IsAsciiLetterLower(name[0]))
        {
            return false;
        }

        foreach (var c in name)
        {
            if (!char.IsAsciiLetterLower(c) && !char.IsAsciiDigit(c) && c != '-')
            {
                return false;
            }
        }

        return true;
    }
}
