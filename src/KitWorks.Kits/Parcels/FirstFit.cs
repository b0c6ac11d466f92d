namespace KitWorks.Kits.Parcels;

/// <summary>First-fit decreasing: each bundle, the longest first, goes into the first parcel that it fits.</summary>
static class FirstFit
{
    public static List<ParcelLoad> Run(ParcelInstance instance)
    {
        var open = new List<Filling>();
        for (var i = 0; i < instance.Items.Length; i++)
            for (var n = 0; n < instance.Count(i); n++)
                if (!open.Exists(p => p.Take(i))) open.Add(Filling.With(i, instance));
        return open.ConvertAll(p => p.Load);
    }

    /// <summary>A parcel that is being filled; it may still become any shape that what is in it fits.</summary>
    sealed class Filling(ParcelInstance instance)
    {
        readonly int[] counts = new int[instance.Items.Length];
        readonly long?[] room = [.. instance.Shapes.Select(_ => (long?)0)];
        long grams;

        public ParcelLoad Load => new(counts, Enumerable.Range(0, room.Length).First(s => Holds(s, room[s], grams)));

        public static Filling With(int item, ParcelInstance instance)
        {
            var filling = new Filling(instance);
            return filling.Take(item) ? filling : throw new InvalidOperationException("A bundle that fits a parcel fits an empty one.");
        }

        public bool Take(int item)
        {
            var more = grams + instance.Items[item].Grams;
            if (!Enumerable.Range(0, room.Length).Any(s => Holds(s, room[s] + instance.Room[s][item], more))) return false;
            for (var s = 0; s < room.Length; s++) room[s] += instance.Room[s][item];
            (grams, counts[item]) = (more, counts[item] + 1);
            return true;
        }

        bool Holds(int shape, long? taken, long mass) => taken <= instance.Shapes[shape].RoomCm3 && mass <= instance.Shapes[shape].MostGrams;
    }
}
