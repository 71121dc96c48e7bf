using RoutingRules.Documents.Formats;
using RoutingRules.Documents.Tables;
using RoutingRules.Model;

namespace RoutingRules.Documents;

/// <summary>Refuses models made by code that no document can say, by the tables of the reader, before anything works with them.</summary>
internal static class Writable
{
    /// <summary>Refuses a show that a reader would refuse. What was read, and what was found good before, is not looked at again.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="show"/> is null.</exception>
    /// <exception cref="ArgumentException">A member holds what the format cannot; the message gives its JSON Pointer.</exception>
    public static void Demand(Show show, string parameter, bool toWrite = false)
    {
        ArgumentNullException.ThrowIfNull(show, parameter);
        var known = show.Admitted;
        if (toWrite && !known.IsWhole)
        {
            Demand(show, ShowTable.Show, parameter);
            show.Admit(isWhole: true);
            return;
        }

        var good = known.Show;
        if (ReferenceEquals(good, show))
        {
            return;
        }

        var unseen = good is null
            ? show
            : show with
            {
                Rig = ReferenceEquals(good.Rig, show.Rig) ? new Rig() : show.Rig,
                Feeds = good.Feeds.IsSame(show.Feeds) ? default : show.Feeds,
                Lines = good.Lines.IsSame(show.Lines) ? default : show.Lines,
                Patch = ReferenceEquals(good.Patch, show.Patch) ? new Patch() : show.Patch,
            };
        Demand(unseen, ShowTable.Show, parameter);
        show.Admit(known.IsWhole || good is null);
    }

    /// <summary>Refuses a document that a reader would refuse.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="document"/> is null.</exception>
    /// <exception cref="ArgumentException">A member holds what the format cannot; the message gives its JSON Pointer.</exception>
    public static void Demand<T>(T document, ObjectTable<T> table, string parameter)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(document, parameter);
        if (table.Check(document) is { } wrong)
        {
            throw new ArgumentException($"The {table.Shape.Title} holds something at {wrong.Pointer} that no document can say: {wrong.Message}.", parameter);
        }
    }
}
