using Logbook.Checks.CrossExamination;

namespace CrossExamination.Tests.Plants;

/// <summary>A plant as the site sees it: its readings become rounds.</summary>
internal sealed class Observed(Plant plant, SiteRelations relations, Pasts? pasts = null)
{
    private readonly Pasts _pasts = pasts ?? new Pasts();

    public Plant Plant { get; } = plant;

    /// <param name="change">A real change of the plant.</param>
    /// <param name="fault">What is wrong with the readings.</param>
    public Round Next(Func<Process, Process>? change = null, Action<double[]>? fault = null)
    {
        var read = Plant.Next(change);
        fault?.Invoke(read);
        for (var i = 0; i < read.Length; i++)
        {
            _pasts.Add(i, Plant.Hour, read[i]);
        }

        return new Round(Plant.Hour, read, [.. relations.Comparisons.Select(c => c.At(_pasts, relations.Constants, Plant.Hour))]);
    }

    public Observed Branch(int seed) => new(Plant.Branch(seed), relations, _pasts.Copy());
}
