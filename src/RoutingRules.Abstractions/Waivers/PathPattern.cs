namespace RoutingRules.Waivers;

/// <summary>
/// Patterns of document paths: <c>*</c> stands for any characters but <c>/</c>, <c>?</c> for one of them, <c>**</c> for any characters at all.
/// </summary>
/// <remarks>
/// Paths are written with <c>/</c> and relative to the folder of the file that holds the pattern. <c>**</c> alone is every document, <c>**/x</c> is x in any
/// folder. Letters count as written.
/// </remarks>
public static class PathPattern
{
    /// <summary>Whether a path is one of those that a pattern names.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="path">The path.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static bool IsMatch(string pattern, string path)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        ArgumentNullException.ThrowIfNull(path);

        // One row of a table: which beginnings of the path the pattern so far can stand for. No backtracking, so no pattern is slow.
        var reach = new bool[path.Length + 1];
        reach[0] = true;
        for (var at = 0; at < pattern.Length; at++)
        {
            if (pattern[at] != '*')
            {
                Step(reach, path, pattern[at]);
                continue;
            }

            var crosses = at + 1 < pattern.Length && pattern[at + 1] == '*';
            var skipsFolder = crosses && (at == 0 || pattern[at - 1] == '/') && at + 2 < pattern.Length && pattern[at + 2] == '/';
            var before = skipsFolder ? (bool[])reach.Clone() : null;
            Spread(reach, path, crosses);
            at += crosses ? 1 : 0;
            if (before is not null)
            {
                // "**/" may stand for no folder at all.
                Step(reach, path, '/');
                at++;
                for (var i = 0; i < reach.Length; i++)
                {
                    reach[i] |= before[i];
                }
            }
        }

        return reach[^1];
    }

    /// <summary>Why a pattern can never fit a path; null when it can.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="pattern"/> is null.</exception>
    public static string? Problem(string pattern)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        return pattern.Contains('\\', StringComparison.Ordinal) ? "folders are separated by '/'"
            : pattern.StartsWith('/') ? "paths are relative to the folder of this file and do not begin with '/'"
            : pattern.StartsWith("./", StringComparison.Ordinal) || pattern.Contains("/./", StringComparison.Ordinal) ? "paths hold no './'"
            : pattern.Contains("//", StringComparison.Ordinal) ? "paths hold no '//'"
            : pattern.EndsWith('/') ? "a document does not end with '/'; to name all in a folder, end with '/**'"
            : null;
    }

    private static void Step(bool[] reach, string path, char wanted)
    {
        for (var i = path.Length; i > 0; i--)
        {
            reach[i] = reach[i - 1] && (wanted == path[i - 1] || (wanted == '?' && path[i - 1] != '/'));
        }

        reach[0] = false;
    }

    private static void Spread(bool[] reach, string path, bool crosses)
    {
        for (var i = 1; i < reach.Length; i++)
        {
            reach[i] |= reach[i - 1] && (crosses || path[i - 1] != '/');
        }
    }
}
