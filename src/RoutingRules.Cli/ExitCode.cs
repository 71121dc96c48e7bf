namespace RoutingRules.Cli;

/// <summary>How the tool ends. When several apply, 2 wins over 1, 1 over 3, 3 over 0.</summary>
internal static class ExitCode
{
    public const int Clean = 0;

    /// <summary>Findings at or above the threshold, something left unplaced, or pins that contradict.</summary>
    public const int Findings = 1;

    /// <summary>Wrong usage, or something that cannot be read or written.</summary>
    public const int Usage = 2;

    /// <summary>Something could not be decided, the run was interrupted, or the tool itself failed.</summary>
    public const int Undecided = 3;

    /// <summary>The one that wins.</summary>
    public static int Worse(int first, int second) => Rank(first) >= Rank(second) ? first : second;

    private static int Rank(int code) =>
        code switch
        {
            Usage => 3,
            Findings => 2,
            Undecided => 1,
            _ => 0,
        };
}
