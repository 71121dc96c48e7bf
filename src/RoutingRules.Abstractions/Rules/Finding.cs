using System.Security.Cryptography;
using System.Text;
using RoutingRules.Model;

namespace RoutingRules.Rules;

/// <summary>One thing a rule, or the reader, has to say about a document.</summary>
/// <remarks>Immutable; ordered by rule id, then pointer, then entities, then message, all ordinal (<see cref="FindingOrder"/>).</remarks>
public sealed record Finding
{
    /// <summary>The rule id, such as <c>RR2003</c>.</summary>
    public required string Rule { get; init; }

    /// <summary>The rule's name, such as <c>output-orphaned</c>.</summary>
    public required string Name { get; init; }

    /// <summary>How serious it is.</summary>
    public required Severity Severity { get; init; }

    /// <summary>What is wrong and where, in a sentence or two for a person.</summary>
    public required string Message { get; init; }

    /// <summary>What to do about it; empty when the message says it.</summary>
    public string Remedy { get; init; } = "";

    /// <summary>What the finding is about, in an order the rule defines.</summary>
    public ValueList<Entity> Entities { get; init; }

    /// <summary>The place in the document as a JSON Pointer (RFC 6901); empty for the whole document.</summary>
    public string Pointer { get; init; } = "";

    /// <summary>The line of the place, from 1; null until located.</summary>
    public int? Line { get; init; }

    /// <summary>The column of the place in UTF-16 units, from 1; null until located.</summary>
    public int? Column { get; init; }

    /// <summary>
    /// The identity of the finding: 16 hexadecimal digits made from the rule id and the entities with their roles, in whatever order they stand.
    /// </summary>
    /// <remarks>It does not change when the document is reordered, reformatted or relabelled. Computed on each call.</remarks>
    public string Fingerprint()
    {
        var text = new StringBuilder(Rule);
        foreach (var entity in Identity())
        {
            text.Append('\n').Append(entity.Role).Append('=').Append(entity.Id);
        }

        return Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())).AsSpan(0, 8)).ToLowerInvariant();
    }

    /// <summary>The entities in ordinal order of role and id.</summary>
    internal ValueList<Entity> Identity()
    {
        if (Entities.Count < 2)
        {
            return Entities;
        }

        var sorted = Entities.AsSpan().ToArray();
        Array.Sort(sorted, static (x, y) => string.CompareOrdinal(x.Role, y.Role) is var order and not 0 ? order : string.CompareOrdinal(x.Id, y.Id));
        return ValueList.Adopt(sorted);
    }
}
