namespace RoutingRules.Rules;

/// <summary>The ids of a list, for asking whether one is among them; few are compared one by one, many are hashed on the first question.</summary>
internal sealed class NameSet(int count, Func<int, string> nameAt)
{
    private const int Few = 8;
    private HashSet<string>? hashed;

    public bool Contains(string name)
    {
        if (count > Few)
        {
            return (hashed ??= Hash()).Contains(name);
        }

        for (var i = 0; i < count; i++)
        {
            if (string.Equals(nameAt(i), name, StringComparison.Ordinal))
            {
                return true;
            }
        }

        return false;
    }

    private HashSet<string> Hash()
    {
        var names = new HashSet<string>(count, StringComparer.Ordinal);
        for (var i = 0; i < count; i++)
        {
            names.Add(nameAt(i));
        }

        return names;
    }
}
