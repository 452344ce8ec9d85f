package ampersheet.sheet;

/** How much of the working a sheet shows. Numbers and key are the same whichever it is. */
public sealed interface Support {
    /** As it goes into the ID of a sheet: another form would make every ID that was printed another one. */
    String stored();

    /** Every step with its result: a worked example. */
    record Full() implements Support {
        @Override
        public String stored() {
            return "Full[]";
        }
    }

    /** The working with some steps left blank. */
    record Faded(Fade fade) implements Support {
        @Override
        public String stored() {
            return "Faded[fade=" + fade.stored() + "]";
        }
    }

    /** The question only. */
    record Bare() implements Support {
        @Override
        public String stored() {
            return "Bare[]";
        }
    }

    /**
     * Which steps are left blank. Research disagrees on the best direction, so that it is the instructor's choice; for
     * circuits, blanking from the first step on did better (Moreno, Reisslein, Ozogul 2009, J Eng Educ 98).
     */
    sealed interface Fade {
        /** See {@link Support#stored()}. */
        String stored();

        /** The first {@code blank} steps. */
        record Forward(int blank) implements Fade {
            @Override
            public String stored() {
                return "Forward[blank=" + blank + "]";
            }
        }

        /** The last {@code blank} steps. */
        record Backward(int blank) implements Fade {
            @Override
            public String stored() {
                return "Backward[blank=" + blank + "]";
            }
        }

        /** Every step of this principle and no other. */
        record Principle(String name) implements Fade {
            @Override
            public String stored() {
                return "Principle[name=" + name + "]";
            }
        }
    }
}
