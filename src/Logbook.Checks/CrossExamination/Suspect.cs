namespace Logbook.Checks.CrossExamination;

/// <summary>One hypothesis with its share.</summary>
/// <param name="Hypothesis">What would have happened.</param>
/// <param name="Share">Of all hypotheses that physics leaves.</param>
/// <param name="Onset">1 when it most likely began with the newest entry.</param>
/// <param name="Likelihood">How much better it explains the rows.</param>
/// <param name="Bias">How wrong it would be, in its own unit, from rows and readings.</param>
/// <param name="Since">The hour at which it most likely began.</param>
internal sealed record Suspect(Hypothesis Hypothesis, double Share, int Onset, double Likelihood, double Bias, double Since)
{
    /// <summary>A method with the readings it moves is told by the method.</summary>
    public int Parameter => Hypothesis.Parameter;

    public static Suspect Of(Hypothesis hypothesis, Trace best, double share) =>
        new(hypothesis, share, best.Onset, best.Physics.Statistic, best.Wrong.Quiet.Strength > 0 ? best.Wrong.Quiet.Size : best.Physics.Size, best.Began);
}
