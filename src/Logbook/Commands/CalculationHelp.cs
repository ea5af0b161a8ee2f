using System.Globalization;
using Logbook.Contracts;

namespace Logbook.Commands;

/// <summary>A calculation's own page.</summary>
internal static class CalculationHelp
{
    public static void Print(TextWriter output, CalculationInfo info)
    {
        output.WriteLine($"{info.Id}: {info.Title}  ({info.System})");
        output.WriteLine();
        output.WriteLine(info.Purpose);
        output.WriteLine();
        output.WriteLine("Formula");
        foreach (var line in info.Formula.Split('\n'))
        {
            output.WriteLine("  " + line.TrimEnd());
        }

        output.WriteLine("Takes");
        foreach (var input in info.Inputs)
        {
            output.WriteLine($"  {input.Role}, {input.Unit}: {input.Meaning}; {Range(input)}{Presence(input)}");
        }

        output.WriteLine("Gives");
        foreach (var result in info.Outputs)
        {
            var estimates = result.Estimates is null ? "" : $"; estimates {result.Estimates}";
            var method = result.MethodU is null ? "" : $"; the method itself is uncertain by {result.MethodU}";
            var off = result.WhenOff is null ? "" : $" (when it is off: {result.WhenOff})";
            output.WriteLine($"  {result.Id}, {result.Unit}: {result.Meaning}{estimates}{method}{off}");
        }

        output.WriteLine($"Source: {info.Source}");
        output.WriteLine($"Leaves out: {info.LeavesOut}");
        output.WriteLine("The result advises; site procedures and qualified judgement rule.");
    }

    private static string Range(InputInfo input) => string.Create(CultureInfo.InvariantCulture, $"{input.Lowest} to {input.Highest}");

    private static string Presence(InputInfo input) => input switch
    {
        { Default: { } d } => string.Create(CultureInfo.InvariantCulture, $"; {d} unless given"),
        { Required: false } => "; may be absent",
        _ => "",
    };
}
