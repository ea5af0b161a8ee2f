namespace Logbook.Checks.Charts;

/// <summary>Exponentially weighted moving average: each new value is a share lambda of the reading and the rest of the past.</summary>
internal sealed record Ewma(double Target, double Sigma, double Lambda, double Width, IReadOnlyList<double> Values)
{
    /// <summary>With known mean and sigma, one false alarm in about 370 independent readings.</summary>
    public const double UsualLambda = 0.2;

    public const double UsualWidth = 2.86;

    public double Last => Values.Count == 0 ? Target : Values[^1];

    public double Lower => Target - SteadyHalf;

    public double Upper => Target + SteadyHalf;

    private double SteadyHalf => Width * Sigma * Math.Sqrt(Lambda / (2 - Lambda));

    public static Ewma Of(IReadOnlyList<double> values, double target, double sigma, double lambda = UsualLambda, double width = UsualWidth)
    {
        var smooth = target;
        return new Ewma(target, sigma, lambda, width, [.. values.Select(v => smooth = (lambda * v) + ((1 - lambda) * smooth))]);
    }

    /// <summary>Half the distance between the limits at the i-th reading (from 1): narrower at the start than later.</summary>
    public double Half(int i) => SteadyHalf * Math.Sqrt(1 - Math.Pow(1 - Lambda, 2 * i));

    /// <summary>Readings (from 1) at which the average is beyond its limits.</summary>
    public IEnumerable<int> Beyond() =>
        Enumerable.Range(1, Values.Count).Where(i => Math.Abs(Values[i - 1] - Target) > Half(i));
}
