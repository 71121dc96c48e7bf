using RoutingRules.Configuration;
using RoutingRules.Model;

namespace RoutingRules.Reports.Lists;

/// <summary>How a list is read.</summary>
public sealed record ListImportOptions
{
    /// <summary>What columns and words are called, and the separator.</summary>
    public ListsConfig Config { get; init; } = new();

    /// <summary>Further headers of columns that are not read.</summary>
    public ValueList<string> Ignore { get; init; }

    /// <summary>Whether feeds or lines that the list does not have are taken out of the show.</summary>
    public bool RemovesAbsent { get; init; }

    /// <summary>Longest list in bytes. 16 MiB.</summary>
    public int MaxBytes { get; init; } = 16 * 1024 * 1024;

    /// <summary>Most rows. 2,000: writing that many into a text of as many takes seconds.</summary>
    public int MaxRows { get; init; } = 2_000;

    /// <summary>Most problems that are told one by one. 200.</summary>
    public int MaxProblems { get; init; } = 200;
}
