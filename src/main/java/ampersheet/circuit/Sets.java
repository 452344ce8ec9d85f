package ampersheet.circuit;

/** Disjoint sets of whole numbers; the smallest member stands for its set. */
final class Sets {
    private final int[] parent;

    Sets(int size) {
        parent = new int[size];
        for (int i = 0; i < size; i++) {
            parent[i] = i;
        }
    }

    int root(int member) {
        int root = member;
        while (parent[root] != root) {
            root = parent[root];
        }
        while (parent[member] != root) {
            int next = parent[member];
            parent[member] = root;
            member = next;
        }
        return root;
    }

    /** Joins the two sets; false when they are one already. */
    boolean join(int a, int b) {
        int rootA = root(a);
        int rootB = root(b);
        if (rootA == rootB) {
            return false;
        }
        parent[Math.max(rootA, rootB)] = Math.min(rootA, rootB);
        return true;
    }
}
