using System.Globalization;
using Logbook.Operators;

namespace Benchmarks;

/// <summary>What the audit's two signals flag on simulated operators, and what a flag is then worth.</summary>
internal static class AuditTable
{
    public static void Print(int months)
    {
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"One crew of four on one hourly round of 14 points, {months} months each; the other three crews are honest."));
        Console.WriteLine("| the crew | same as earlier | varies less | flagged by either | honest colleagues beside it | of the flagged, such (1 in 100 is) |");
        Console.WriteLine("|---|---|---|---|---|---|");
        double honest = 0;
        foreach (var manner in Enum.GetValues<Manner>())
        {
            var m = Measured.Of(manner, months, seed: 5);
            honest = manner == Manner.Honest ? (m.Either + (3 * m.Others)) / 4 : honest;
            var worth = manner >= Manner.Copies ? m.Worth(honest).ToString("P0", CultureInfo.InvariantCulture) : "";
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {Words(manner)} | {m.Same:P1} | {m.Quiet:P1} | {m.Either:P1} | {m.Others:P1} | {worth} |"));
        }

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"An honest crew's month is flagged in {honest:P1}."));
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
