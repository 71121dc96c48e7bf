using System.Text;
using RoutingRules.Configuration;
using RoutingRules.Documents.Tables;
using RoutingRules.Model;

namespace RoutingRules.Reports.Lists;

/// <summary>Which header means which member.</summary>
internal sealed class ListHeaders
{
    private readonly ListMember[] members;
    private readonly Dictionary<string, string?> known = new(StringComparer.Ordinal);
    private readonly ListConfig config;

    /// <param name="list">The list.</param>
    /// <param name="config">What a crew calls its columns; wins over the names of members.</param>
    /// <param name="ignored">Further headers that are not read.</param>
    /// <exception cref="ArgumentException">The configuration names a member that there is not; one that was read cannot.</exception>
    public ListHeaders(IntentList list, ListConfig config, ValueList<string> ignored)
    {
        members = ListMember.Of(list);
        this.config = config;
        foreach (var member in members)
        {
            known[Plain(member.Name)] = member.Name;
        }

        foreach (var header in config.Ignore)
        {
            known[Plain(header)] = null;
        }

        foreach (var column in config.Columns)
        {
            if (!Array.Exists(members, member => member.Name == column.Member))
            {
                throw new ArgumentException(
                    $"A {ListElements.Word(list)} has no member '{column.Member}' to take the column '{column.Header}'.",
                    nameof(config)
                );
            }

            known[Plain(column.Header)] = column.Member;
        }

        foreach (var header in ignored)
        {
            known[Plain(header)] = null;
        }
    }

    /// <summary>The header that a list is written with, which means the member on reading.</summary>
    /// <exception cref="ArgumentException">There is none.</exception>
    public string For(ListMember member)
    {
        var header = config.Columns.LastOrDefault(column => column.Member == member.Name)?.Header ?? member.Name;
        return known[Plain(header)] == member.Name
            ? header
            : throw new ArgumentException(
                $"The configuration gives the header '{header}' another meaning than the member {member.Name}; give {member.Name} a header of its own.",
                nameof(member)
            );
    }

    /// <summary>True when the header is known; the member is null when its column is not to be read.</summary>
    public bool TryFind(string header, out ListMember? member)
    {
        var found = known.TryGetValue(Plain(header), out var name);
        member = name is null ? null : Array.Find(members, candidate => candidate.Name == name);
        return found;
    }

    /// <summary>The header that was probably meant, or null.</summary>
    public string? Nearest(string header) =>
        Spelling.Nearest(header.Trim(), [.. config.Columns.Select(column => column.Header), .. members.Select(member => member.Name)]);

    /// <summary>A header without what does not matter.</summary>
    public static string Plain(string header)
    {
        var plain = new StringBuilder();
        foreach (var letter in header)
        {
            if (!char.IsWhiteSpace(letter) && letter is not ('-' or '_'))
            {
                plain.Append(char.ToLowerInvariant(letter));
            }
        }

        return plain.ToString();
    }
}
