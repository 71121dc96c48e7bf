using RoutingRules.Checking;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Fixing;

/// <summary>Tries a fix on a copy of a show and says what speaks against it.</summary>
internal sealed class Trial
{
    private Trial(FixState? state, ValueList<SinkMove> moves, string? againstSafe, string? against)
    {
        State = state;
        Moves = moves;
        AgainstSafe = againstSafe ?? against;
        Against = against;
    }

    /// <summary>The state after the fix; null when its edits do not fit.</summary>
    public FixState? State { get; }

    public ValueList<SinkMove> Moves { get; }

    /// <summary>Why it cannot be taken as a safe fix; null when it can.</summary>
    public string? AgainstSafe { get; }

    /// <summary>Why it cannot be taken at all; null when it can.</summary>
    public string? Against { get; }

    public static Trial Run(Checker checker, FixState before, Finding finding, Fix fix, CancellationToken cancellation)
    {
        var show = before.Show.Document;
        foreach (var edit in fix.Edits)
        {
            if (edit.Apply(show) is not { } edited)
            {
                return new Trial(null, default, null, $"the document has something else at {edit.Pointer} than the fix expects");
            }

            show = edited;
        }

        var resolved = checker.Resolve(show);
        var after = new FixState(resolved, checker.Check(resolved, cancellation));
        var moves = SinkMoves.Between(before.Show, resolved);
        return new Trial(after, moves, AgainstASafe(before.Check, after.Check, moves), AgainstAny(before, after, finding));
    }

    private static string? AgainstAny(FixState before, FixState after, Finding finding)
    {
        var mended = finding.Fingerprint();
        var known = new KnownFindings(before.Check.Findings);
        foreach (var now in after.Check.Findings)
        {
            if (now.Fingerprint() == mended)
            {
                return "the finding would still be there";
            }

            if (now.Severity == Severity.Error && known.SeverityOf(now) != Severity.Error)
            {
                return $"it would bring a new error, {now.Rule}: {now.Message}";
            }
        }

        if (Deliveries.Lost(before.Show, after.Show) is { } lost)
        {
            return $"it would silence {lost}, which arrives as it stands";
        }

        return NewUndecided(before.Check, after.Check) is { } subject
            ? $"{subject.Rule} could no longer decide about {subject.Subject}: {subject.Reason}"
            : null;
    }

    private static string? AgainstASafe(CheckResult before, CheckResult after, ValueList<SinkMove> moves)
    {
        if (!moves.IsEmpty)
        {
            return $"it would change what {moves[0].At} carries";
        }

        var known = new KnownFindings(before.Findings);
        foreach (var now in after.Findings)
        {
            if (known.SeverityOf(now) is not { } severity || now.Severity > severity)
            {
                return $"it would bring a new finding, {now.Rule}: {now.Message}";
            }
        }

        return null;
    }

    private static UndecidedSubject? NewUndecided(CheckResult before, CheckResult after)
    {
        var known = before.Undecided.Select(subject => (subject.Rule, subject.Subject)).ToHashSet();
        return after.Undecided.FirstOrDefault(subject => !known.Contains((subject.Rule, subject.Subject)));
    }
}
