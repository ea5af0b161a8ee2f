using MathNet.Numerics.LinearAlgebra;

namespace Logbook.Checks.CrossExamination;

/// <summary>
/// How far the readings really go when a method is off by one unit: so that the rows in which the method speaks change as they
/// would, and every other row stays as it was. Where more than one way does that, the one that surprises least: readings that
/// usually go together do so here.
/// </summary>
internal static class Moved
{
    /// <summary>How much closer the rows must be kept than the readings are kept still.</summary>
    private const double Strict = 1e3;

    /// <param name="line">What there is.</param>
    /// <param name="scaled">Usual sensitivities of the rows to all parameters, each row in its own uncertainty.</param>
    /// <param name="usual">The usual surprise of each reading.</param>
    /// <param name="together">How the readings' surprises go together, each in its usual surprise; positive definite.</param>
    public static IReadOnlyDictionary<int, IReadOnlyList<(int Parameter, double By)>> Of(Line line, Matrix<double> scaled, IReadOnlyList<double> usual, Matrix<double> together) =>
        Enumerable.Range(line.Readings, line.Parameters.Count - line.Readings)
            .Where(m => line.Rows.Count > 0 && line.Parameters[m].Moves.Count > 0)
            .ToDictionary(m => m, m => Of(line.Parameters[m].Moves, scaled, usual, together, m));

    private static IReadOnlyList<(int Parameter, double By)> Of(IReadOnlyList<int> moves, Matrix<double> scaled, IReadOnlyList<double> usual, Matrix<double> together, int method)
    {
        var rows = Enumerable.Range(0, scaled.RowCount).Where(r => scaled.Row(r).Any(v => v != 0)).ToList();
        var system = Matrix<double>.Build.Dense(rows.Count + moves.Count, moves.Count);
        var wanted = Vector<double>.Build.Dense(rows.Count + moves.Count);
        var least = Matrix<double>.Build.Dense(moves.Count, moves.Count, (i, j) => together[moves[i], moves[j]]).Cholesky().Factor.Inverse();
        for (var j = 0; j < moves.Count; j++)
        {
            for (var r = 0; r < rows.Count; r++)
            {
                system[r, j] = Strict * scaled[rows[r], moves[j]] * usual[moves[j]];
                wanted[r] = Strict * scaled[rows[r], method];
            }

            system.SetSubMatrix(rows.Count, j, least.SubMatrix(0, moves.Count, j, 1));
        }

        var by = system.QR().Solve(wanted);
        return [.. moves.Select((m, j) => (m, by[j] * usual[m])).Where(m => m.Item2 != 0)];
    }
}
