using System.Globalization;
using Logbook.Operators;

namespace Benchmarks;

/// <summary>What the audit's two signals flag on simulated operators, and what a flag is then worth.</summary>
internal static class AuditTable
{
    public static void Print(int months)
    {
        var measured = Enum.GetValues<Manner>().Select(manner => Measured.Of(manner, months, seed: 5)).ToList();
        // Every honest crew there was: the one that is looked at, and the three beside each.
        var honest = (measured[0].Either + (3 * measured.Sum(m => m.Others))) / (1 + (3 * measured.Count));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"One crew of four on one hourly round of 14 points, {months} months each; the other three crews are honest."));
        Console.WriteLine("| the crew | same as earlier | varies less | flagged in a month | of the flagged, such (1 in 100 is) | two shifts in eight weeks |");
        Console.WriteLine("|---|---|---|---|---|---|");
        var (innocent, runs) = (0.0, Math.Max(1, months / 2));
        foreach (var m in measured)
        {
            var (twice, others) = Measured.Twice(m.Manner, runs, seed: 9);
            innocent += m.Manner == Manner.Honest ? twice + (3 * others) : 3 * others;
            var worth = m.Manner >= Manner.Copies ? m.Worth(honest).ToString("P0", CultureInfo.InvariantCulture) : "";
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {Words(m.Manner)} | {m.Same:P1} | {m.Quiet:P1} | {m.Either:P1} | {worth} | {twice:P0} |"));
        }

        var crews = 1 + (3 * measured.Count);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"An honest crew is flagged in {honest:P1} of {crews * months} months, and in two shifts in {innocent / crews:P1} of {crews * runs} stretches of eight weeks."));
    }

    private static string Words(Manner manner) => manner switch
    {
        Manner.Honest => "honest",
        Manner.Hurried => "hurried: leaves out one in five, reads coarsely",
        Manner.TypesUpLater => "types up later from a sheet, one in three rounded",
        Manner.Copies => "copies a sheet in 3 of 10 walks of a night, one in seven nudged",
        Manner.Invents => "invents half of the walks of a night",
        _ => "invents whole nights",
    };
}
