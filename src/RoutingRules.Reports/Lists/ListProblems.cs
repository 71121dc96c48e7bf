using RoutingRules.Model;

namespace RoutingRules.Reports.Lists;

/// <summary>Collects problems, up to a number.</summary>
internal sealed class ListProblems(int most)
{
    private readonly List<(ListProblem Problem, int Place)> problems = [];
    private int leftOut;

    public bool IsEmpty => problems.Count == 0;

    /// <summary>Adds a problem.</summary>
    /// <param name="line">The line, or null.</param>
    /// <param name="column">The header, or null.</param>
    /// <param name="message">What it is; becomes a sentence.</param>
    /// <param name="remedy">What to do, as a sentence.</param>
    /// <param name="place">The position of the cell in its row.</param>
    public void Add(int? line, string? column, string message, string remedy, int place = 0)
    {
        if (problems.Count >= most)
        {
            leftOut++;
            return;
        }

        problems.Add(
            (
                new ListProblem
                {
                    Line = line,
                    Column = column,
                    Message = Sentence(message),
                    Remedy = remedy,
                },
                place
            )
        );
    }

    /// <summary>The problems by line and cell, and how many more there are.</summary>
    public ValueList<ListProblem> ToList()
    {
        IEnumerable<ListProblem> all = problems.OrderBy(entry => entry.Problem.Line ?? 0).ThenBy(entry => entry.Place).Select(entry => entry.Problem);
        return (
            leftOut == 0
                ? all
                : all.Append(
                    new ListProblem
                    {
                        Message = FormattableString.Invariant($"{leftOut} more {(leftOut == 1 ? "problem is" : "problems are")} not listed."),
                        Remedy = "Mend the listed ones first; they may be of one kind.",
                    }
                )
        ).ToValueList();
    }

    private static string Sentence(string message) => char.ToUpperInvariant(message[0]) + message[1..] + (message[^1] is '.' or '?' ? "" : ".");
}
