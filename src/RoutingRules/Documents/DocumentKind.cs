using System.Text.Json;

namespace RoutingRules.Documents;

/// <summary>Tells by the members at its root what a document is, for somebody who has given it to the wrong command.</summary>
internal static class DocumentKind
{
    /// <summary>A member that only one kind has beside those before it, what the kind is called, and what such a document is good for.</summary>
    private static readonly (string Member, string Title, string Use)[] Kinds =
    [
        ("acts", "running order", "Plan its acts and changeovers with 'routing-rules changeover'."),
        ("rig", "show", "Give it to a command that takes shows."),
        ("portGroups", "profile", "Give the folder it is in to --profiles, or put it into the show under rig, profiles."),
        ("coverage", "report of a check", "It tells what came of checking; name the show itself."),
        ("documents", "baseline", "Give it to --baseline, together with a show."),
        ("waivers", "list of waivers", "Give it to --waivers, together with a show."),
        ("failOn", "configuration", "Give it to --config, together with a show."),
        ("rules", "configuration", "Give it to --config, together with a show."),
        ("assignment", "configuration", "Give it to --config, together with a show."),
        ("lists", "configuration", "Give it to --config, together with a show."),
    ];

    /// <summary>What a document is, when it is not what was asked for; null when it is, or nobody can say.</summary>
    /// <param name="text">The text, without a byte order mark.</param>
    /// <param name="title">What was asked for.</param>
    public static (string Title, string Use)? Other(ReadOnlySpan<byte> text, string title)
    {
        if (!Array.Exists(Kinds, known => known.Title == title))
        {
            return null;
        }

        var members = Members(text);
        var kind = Array.Find(Kinds, known => members.Contains(known.Member));
        return kind.Title is null || kind.Title == title ? null : (kind.Title, kind.Use);
    }

    private static HashSet<string> Members(ReadOnlySpan<byte> text)
    {
        var members = new HashSet<string>(StringComparer.Ordinal);
        var json = new Utf8JsonReader(text, new JsonReaderOptions { MaxDepth = 256 });
        try
        {
            while (json.Read())
            {
                if (json.TokenType == JsonTokenType.PropertyName && json.CurrentDepth == 1)
                {
                    members.Add(json.GetString()!);
                    json.Skip();
                }
            }
        }
        catch (Exception fault) when (fault is JsonException or InvalidOperationException)
        {
            // Broken off, or a name of halves of characters: what was seen until then counts.
        }

        return members;
    }
}
