using Logbook.Contracts;
using Logbook.Plant;
using Logbook.Plant.Reading;

namespace Logbook.Testing;

/// <summary>What would keep a calculation's description from being used.</summary>
internal static class BenchFaults
{
    public static IReadOnlyList<string> Of(CalculationInfo info) =>
    [
        .. Names(info),
        .. info.Inputs.SelectMany(Input),
        .. info.Inputs.Where(i => i.CountsOnFrom is { } from && !info.Inputs.Any(o => o != i && o.Role.Equals(from, StringComparison.Ordinal) && o.Unit.Equals(i.Unit, StringComparison.Ordinal)))
            .Select(i => $"{i.Role}: it counts on from '{i.CountsOnFrom}', which is no other role in {i.Unit}"),
        .. info.Outputs.SelectMany(o => Output(info, o)),
        .. Area.All.Contains(info.System, StringComparer.Ordinal) ? Array.Empty<string>() : [$"system '{info.System}' is none of: {string.Join(", ", Area.All)}"],
        .. Empty(info),
    ];

    private static IEnumerable<string> Names(CalculationInfo info)
    {
        string[] names = [info.Id, .. info.Inputs.Select(i => i.Role), .. info.Outputs.Select(o => o.Id)];
        foreach (var name in names.Where(n => n.Length == 0 || n.Any(c => !char.IsAsciiLetterLower(c) && !char.IsAsciiDigit(c) && c != '-')))
        {
            yield return $"'{name}' is no name: lower-case letters, digits and '-'";
        }

        foreach (var twice in info.Inputs.Select(i => i.Role).GroupBy(r => r, StringComparer.Ordinal).Concat(info.Outputs.Select(o => o.Id).GroupBy(o => o, StringComparer.Ordinal)).Where(g => g.Count() > 1))
        {
            yield return $"'{twice.Key}' is named twice";
        }
    }

    private static IEnumerable<string> Input(InputInfo input)
    {
        if (Units.Find(input.Unit) is null)
        {
            yield return $"{input.Role}: unit '{input.Unit}' is unknown";
        }

        if (!(input.Lowest < input.Highest))
        {
            yield return $"{input.Role}: the range is empty";
        }

        if (input.Default is { } value && !(value >= input.Lowest && value <= input.Highest))
        {
            yield return $"{input.Role}: the default is outside its range";
        }
    }

    private static IEnumerable<string> Output(CalculationInfo info, OutputInfo output)
    {
        if (Units.Find(output.Unit) is null)
        {
            yield return $"{output.Id}: unit '{output.Unit}' is unknown";
        }

        foreach (var role in output.Moves.Concat(output.NeedsFitted).Where(m => info.Inputs.All(i => !i.Role.Equals(m, StringComparison.Ordinal))))
        {
            yield return $"{output.Id}: '{role}' is none of its roles";
        }

        if (output.MethodU is { } text && Uncertainties.Parse(text, Place.Unknown, out _) is null)
        {
            yield return $"{output.Id}: method uncertainty '{text}' is neither a number nor a share";
        }
    }

    private static IEnumerable<string> Empty(CalculationInfo info) =>
        from text in new[] { ("title", info.Title), ("purpose", info.Purpose), ("formula", info.Formula), ("source", info.Source), ("what it leaves out", info.LeavesOut) }
        where string.IsNullOrWhiteSpace(text.Item2)
        select $"{text.Item1} is empty";
}
