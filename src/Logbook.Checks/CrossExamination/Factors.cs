using MathNet.Numerics.LinearAlgebra;

namespace Logbook.Checks.CrossExamination;

/// <summary>Factors of a covariance for whichever places speak; the few patterns that occur are kept.</summary>
internal sealed class Factors(Matrix<double> covariance)
{
    private const int MostKept = 500;

    private readonly Dictionary<string, Factor?> _kept = new(StringComparer.Ordinal);

    /// <returns>Null when the part is not positive definite: then nothing can be said.</returns>
    public Factor? Of(IReadOnlyList<int> places)
    {
        var pattern = string.Create(places.Count, places, (span, p) =>
        {
            for (var i = 0; i < span.Length; i++)
            {
                span[i] = (char)p[i];
            }
        });
        if (!_kept.TryGetValue(pattern, out var factor))
        {
            if (_kept.Count >= MostKept)
            {
                _kept.Clear();
            }

            _kept[pattern] = factor = Factor.Of(covariance, places);
        }

        return factor;
    }

    /// <summary>Squared distance of a vector over the places where it has a number.</summary>
    public (double Square, int Degrees) Distance(double[] vector)
    {
        int[] places = [.. Enumerable.Range(0, vector.Length).Where(p => double.IsFinite(vector[p]))];
        if (places.Length == 0 || Of(places) is not { } factor)
        {
            return (0, 0);
        }

        double[] there = [.. places.Select(p => vector[p])];
        return (Factor.Dot(there, factor.Weigh(there)), places.Length);
    }
}
