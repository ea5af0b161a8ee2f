using System.Diagnostics;
using System.Globalization;
using CrossExamination.Tests.Examining;
using CrossExamination.Tests.Plants;

// dotnet run --project tests/CrossExamination.Tests -- [positions] [first seed] [lines]: the tables of both simulated lines.
var numbers = args.Select(a => int.Parse(a, CultureInfo.InvariantCulture)).ToList();
var (positions, seed, lines) = (numbers.ElementAtOrDefault(0) is > 0 and var p ? p : 6, numbers.ElementAtOrDefault(1), numbers.ElementAtOrDefault(2) is > 0 and var l ? l : 3);
(string Title, Func<int, Plant> Make, double Lag)[] plants =
[
    ("easy line", s => new EasyPlant(s), 0),
    ("hard line, rounds every two hours", s => new HardPlant(s), 2),
    ("hard line, rounds every hour, titrations in turn", s => new HardPlant(s, 1), 2),
];
foreach (var (title, make, lag) in numbers.Count > 3 ? [plants[numbers[3]]] : plants)
{
    var watch = Stopwatch.StartNew();
    var evaluation = Evaluation.Run(make, lag, Enumerable.Range(0, lines).Select(i => seed + (97 * i)), positions);
    Console.WriteLine(Tables.Of(title, evaluation));
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"took {watch.Elapsed.TotalSeconds:F1} s"));
}
